import { allKinds, fileKinds, units, type Dimension, type Field, type Kind } from '../vocabulary/index.js';
import { ebnfHead } from './ebnf-head.js';
import { formOf } from './value-form.js';

/** The written grammar, ISO/IEC 14977: the line and token grammar by hand, one production per kind generated. */
export function emitEbnf(): Record<string, string> {
  const values = new Productions();
  const kinds = allKinds.map((kind) => kindProductions(kind, values));
  const parts = [
    ebnfHead,
    section('Lines', ['statement = ' + wrapped(fileKinds.map((kind) => identifier(kind.word)))]),
    ...kinds,
    section('Values', values.list()),
  ];
  return { 'schemas/steelyard.ebnf': `${parts.join('\n\n')}\n` };
}

/** The productions of values, each once; two different values can't share a name. */
class Productions {
  private readonly known = new Map<string, string>();

  define(name: string, body: string): string {
    const before = this.known.get(name);
    if (before !== undefined && before !== body) throw new Error(`two values are called “${name}”`);
    this.known.set(name, body);
    return name;
  }

  list(): readonly string[] {
    return [...this.known].sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, body]) => `${name} = ${body};`);
  }
}

function kindProductions(kind: Kind, values: Productions): string {
  const own = kind.word.replace(/-/g, ' ');
  const fields = Object.values(kind.fields) as Field[];
  const ledFields = fields.filter((field) => !field.bare);
  const bare = fields.filter((field) => field.bare).map((field) => valueExpression(field, values) + (field.counts ? ', "at"' : ''));
  const facts = ledFields.map((field) => `${(field.lead as string).split(' ').map(quoted).join(', ')}, ${valueExpression(field, values)}`);
  const slot = [...(facts.length > 0 ? [`${own} fact`] : []), ...bare];
  const below = [...(facts.length > 0 ? [`${own} fact, end of line`] : []), ...kind.children.map((child) => identifier(child.word))];
  const head = [
    quoted(kind.word),
    ...(kind.name === 'required' ? ['own name'] : kind.name === 'optional' ? ['[ own name ]'] : []),
    ...(kind.title === 'required' ? ['text'] : kind.title === 'optional' ? ['[ text ]'] : []),
    ...(slot.length > 0 ? [`{ ${own} slot }`] : []),
    'end of line',
    ...(below.length > 0 ? [`[ indent, ${own} below, { ${own} below }, dedent ]`] : []),
  ];
  return section(remark(kind, ledFields), [
    `${identifier(kind.word)} = ${head.join(', ')};`,
    ...(slot.length > 0 ? [`${own} slot = ${wrapped(slot)}`] : []),
    ...(facts.length > 0 ? [`${own} fact = ${wrapped(facts)}`] : []),
    ...(below.length > 0 ? [`${own} below = ${wrapped(below)}`] : []),
  ]);
}

function remark(kind: Kind, ledFields: readonly Field[]): string {
  const repeatable = ledFields.filter((field) => field.many).map((field) => `"${field.lead ?? ''}"`);
  return `${kind.word}${repeatable.length === 0 ? '' : `; may be said again: ${repeatable.join(', ')}`}`;
}

function valueExpression(field: Field, values: Productions): string {
  const form = formOf(field.value);
  const name = nameFrom(field.value.label);
  const listed = (item: string) => (form.list ? `${item}, { ",", ${item} }` : item);
  if (form.shape === 'figure') return listed(values.define(name, `figure${unitExpression(form.measures, values)}`));
  if (form.shape === 'readings') return values.define(name, `number, { number }${unitExpression(form.measures, values)}`);
  const alternatives = form.refersTo.length > 0 ? ['name'] : [
    ...form.choices.map(quoted),
    ...(form.takes.word ? ['word'] : []),
    ...(form.takes.run ? ['mixed'] : []),
    ...(form.takes.text ? ['text'] : []),
    ...(form.takes.word && form.takes.day ? ['number', 'date'] : form.takes.month ? ['date'] : form.takes.day ? ['day'] : []),
  ];
  const item = alternatives.length === 1 && form.choices.length === 0 ? (alternatives[0] as string) : values.define(name, alternatives.join(' | '));
  return listed(item);
}

function unitExpression(measures: readonly Dimension[], values: Productions): string {
  const plain = measures.includes('plain');
  const named = measures.filter((dimension) => dimension !== 'plain').map((dimension) => {
    if (dimension === 'percent') return '"%"';
    if (dimension === 'money') return '[ currency ]';
    return values.define(`${dimension} unit`, units.filter((unit) => unit.dimension === dimension).map((unit) => quoted(unit.word)).join(' | '));
  });
  if (named.length === 0) return '';
  if (plain) return `, [ ${named.join(' | ')} ]`;
  return named.length === 1 ? `, ${named[0] as string}` : `, ( ${named.join(' | ')} )`;
}

/** Identifiers of the standard are letters and digits; it allows spaces between them. */
function identifier(kindWord: string): string {
  return `${kindWord.replace(/-/g, ' ')} line`;
}

function nameFrom(label: string): string {
  return label.replace(/, or several with commas$/, '').replace(/^(?:an?|the) /, '').replace(/[^A-Za-z0-9]+/g, ' ').trim();
}

const quoted = (terminal: string) => `"${terminal}"`;
const section = (title: string, lines: readonly string[]) => [`(* ${title} *)`, ...lines].join('\n');
const wrapped = (choices: readonly string[]) => `${choices.join('\n  | ')};`;
