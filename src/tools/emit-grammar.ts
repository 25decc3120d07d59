import { allKinds, fileKinds, type Field, type Kind } from '../vocabulary/index.js';
import { anyOf, boundary, itemPatterns, led, nameShape, scope, shared, word, type Pattern } from './grammar-patterns.js';
import { parentsOf } from './places.js';
import { formOf, type ValueForm } from './value-form.js';

/** The colours of the language: one rule for each kind's line, one for each fact on a line of its own. */
export function emitGrammar(): Record<string, string> {
  const grammar = {
    information_for_contributors: ['Generated from src/vocabulary by src/tools/emit.ts; change it there.'],
    name: 'Steelyard',
    scopeName: 'source.steelyard',
    fileTypes: ['yard'],
    patterns: [
      ...allKinds.map((kind) => ({ include: `#line-${kind.word}` })),
      { include: '#facts' },
      ...anywhere,
      ...rest,
    ],
    repository: {
      ...Object.fromEntries(allKinds.map((kind) => [`line-${kind.word}`, kindLine(kind)])),
      facts: { patterns: facts() },
      ...shared,
    },
  };
  return { 'schemas/steelyard.tmLanguage.json': `${JSON.stringify(grammar, null, 2)}\n` };
}

const anywhere: readonly Pattern[] = [{ include: '#comment' }, { include: '#title' }, { include: '#curly' }];
const rest: readonly Pattern[] = [{ include: '#figure' }, { include: '#mark' }, { include: '#run' }];

/**
 * A line of one kind. Its words are keywords only here, so a name that is also a word of another kind stays a name,
 * and a kind's own word only as the first of a line, so a name such as `pump` or `tow` is never taken for one.
 */
function kindLine(kind: Kind): Pattern {
  const top = fileKinds.includes(kind);
  const below = parentsOf(kind).length > 0;
  const indent = top ? (below ? '[ \\t]*' : '') : '[ \\t]+';
  const name = { name: scope(`entity.name.type.${kind.word}`) };
  return {
    begin: `^${indent}(${kind.word})${boundary}${nameBehind(kind)}`,
    beginCaptures: { 1: { name: scope(top ? 'keyword.control' : 'keyword.other') }, ...(kind.name === 'none' ? {} : { 2: name, 3: name }) },
    end: '$',
    patterns: [...anywhere, ...slots(kind), ...rest],
  };
}

/** The same choice as the reader's: before a title any word is the name, elsewhere only one without a meaning. */
function nameBehind(kind: Kind): string {
  if (kind.name === 'none') return '';
  if (kind.name === 'required') return `(?:[ \\t]+(${nameShape})${boundary})?`;
  const taken = [...kind.leads.keys(), ...bareFields(kind).flatMap((field) => formOf(field.value).choices)];
  const free = taken.length === 0 ? '' : `(?!${anyOf(taken)}${boundary})`;
  return `(?:[ \\t]+(?:(${nameShape})(?=[ \\t]*")|${free}(${nameShape})${boundary}))?`;
}

function slots(kind: Kind): readonly Pattern[] {
  const fields = bareFields(kind);
  const forms = fields.map((field) => formOf(field.value));
  const choices = forms.flatMap((form) => form.choices);
  return [
    ...[...kind.leads].map(([lead, key]) => led('in line', lead, [formOf((kind.fields[key] as Field).value)])),
    ...(fields.some((field) => field.counts) ? [word(['at'], 'keyword.other')] : []),
    ...(choices.length > 0 ? [word(choices, 'constant.language')] : []),
    ...forms.filter((form) => form.shape === 'items' && form.choices.length === 0).flatMap((form) => itemPatterns([form])),
  ];
}

function bareFields(kind: Kind): readonly Field[] {
  return Object.values(kind.fields).filter((field: Field) => field.bare);
}

/** Facts on lines of their own. A line alone does not show what it stands below, so the kinds are taken together. */
function facts(): readonly Pattern[] {
  const forms = new Map<string, ValueForm[]>();
  for (const kind of allKinds) {
    for (const [lead, key] of kind.leads) forms.set(lead, [...(forms.get(lead) ?? []), formOf((kind.fields[key] as Field).value)]);
  }
  // Of two words that lead to something, the first may lead to something by itself elsewhere.
  const words = (lead: string) => lead.split(' ').length;
  return [...forms].sort(([a], [b]) => words(b) - words(a)).map(([lead, known]) => led('line start', lead, known));
}
