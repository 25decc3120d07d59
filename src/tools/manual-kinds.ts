import { allKinds, fileKinds, topicWords, type Field, type Kind } from '../vocabulary/index.js';
import { code, fence, oneOf, plain, sentenceCase, table } from './markdown.js';
import { nameOfExample, written } from './manual-written.js';
import { parentsOf } from './places.js';

/** The chapter on the lines: one section for each kind. */
export function kindsChapter(): string {
  const only = allKinds.filter((kind) => !fileKinds.includes(kind));
  return [
    '## The lines',
    `At the left edge can stand: ${fileKinds.map(link).join(', ')}.`,
    `Only below another line: ${only.map((kind) => `${link(kind)} (below ${oneOf(parentsOf(kind).map((parent) => parent.word))})`).join(', ')}.`,
    ...allKinds.map(section),
  ].join('\n\n');
}

function section(kind: Kind): string {
  const rows = [...headRows(kind), ...Object.keys(kind.fields).map((key) => fieldRow(kind, key))];
  return [
    `### ${kind.word}`,
    plain(kind.says),
    `It stands ${places(kind)}.`,
    ...(rows.length === 0 ? [] : [table(['Written', 'What it is', 'What it says', 'Needed'], rows)]),
    ...Object.values(kind.fields).flatMap((field) => wordList(field as Field)),
    below(kind),
    'Example:',
    fence(kind.example),
  ].join('\n\n');
}

function places(kind: Kind): string {
  const edge = fileKinds.includes(kind) ? ['at the left edge'] : [];
  const parents = parentsOf(kind).map(link);
  return oneOf([...edge, ...(parents.length === 0 ? [] : [`below ${oneOf(parents)}`])]);
}

function headRows(kind: Kind): string[][] {
  const needed = (wanted: Kind['name']) => (wanted === 'required' ? 'yes' : 'no');
  return [
    ...(kind.name === 'none' ? [] : [[code(nameOfExample(kind.word)), 'its name', 'The short name that other lines use for it.', needed(kind.name)]]),
    ...(kind.title === 'none' ? [] : [[code('"…"'), 'its title, in quotes', plain(sentenceCase(kind.titleSays)), needed(kind.title)]]),
  ];
}

function fieldRow(kind: Kind, key: string): string[] {
  const field = kind.fields[key] as Field;
  const says = field.many ? `${field.says} May stand on several lines.` : field.says;
  return [written(kind, key), plain(field.value.label), plain(sentenceCase(says)), 'no'];
}

/** What the words of a closed list mean. */
function wordList(field: Field): string[] {
  const meanings = Object.entries({ ...field.value.words, ...field.value.builtIn });
  if (meanings.length === 0) return [];
  if (field.value.words === topicWords) return [`The words after ${code(field.lead ?? '')} are explained under [Trade topics](#trade-topics).`];
  const lead = field.lead === undefined ? 'The words' : `The words after ${code(field.lead)}`;
  const heading = field.value.builtIn !== undefined && field.value.words === undefined ? `After ${code(field.lead ?? '')}, besides names` : lead;
  return [`${heading}:`, meanings.map(([word, meaning]) => `- ${code(word)}: ${plain(meaning)}`).join('\n')];
}

function below(kind: Kind): string {
  const leads = [...kind.leads.keys()].map(code);
  const facts = leads.length === 0 ? '' : `Each of ${leads.join(', ')} may stand on the line itself or on a line of its own, indented below it. `.replace(/^Each of (`[^`]*`) may/, '$1 may');
  const lines = kind.children.length === 0 ? '' : `Below it can stand ${kind.children.map(link).join(', ')}. `;
  return facts === '' && lines === '' ? 'Nothing stands below it.' : `${facts}${lines}`.trim();
}

function link(kind: Kind): string {
  return `[${kind.word}](#${kind.word})`;
}
