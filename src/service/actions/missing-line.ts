import { topicsOf, type Estimate, type Resolved } from '../../estimate/index.js';
import { clip, NOTHING, type Record, type Topic } from '../../vocabulary/index.js';
import type { Lacks, MissingLine } from '../checks/lacking.js';
import { factBelow } from '../checks/lines.js';
import type { FeatureContext } from '../context.js';
import type { Action } from '../feature-types.js';
import type { Diagnostic } from '../types.js';
import { actionOf, countsAs, lineAtEnd, lineBehind, nameBehind, type Change } from './edits.js';
import { recordAt } from './record-at.js';

/** What a new line of a kind says, besides its title. Its figure is left open: the line's own message asks for it. */
const REST: Readonly<{ [kind in MissingLine['kind']]: string }> = { part: 'new', sublet: '', labour: '' };
/** The word by which an option names such a line. */
const OPTION_KEY: Readonly<{ [kind in MissingLine['kind']]: string }> = { part: 'fit', sublet: 'send', labour: 'do' };

/** For work that lacks something: brings in a line that is there already, adds one, or says that this line covers it. */
export function addMissing(diagnostic: Diagnostic, context: FeatureContext): readonly (Action | undefined)[] {
  const { data, code, uri } = diagnostic;
  if (!isLacks(data)) return [];
  const { resolved } = context.weighing(uri);
  const option = resolved.estimate.options.find(({ name }) => name === data.option)?.record;
  const cause = recordAt(diagnostic, context);
  if (option === undefined || cause === undefined) return [];
  const topic = data.topics[0] as Topic;
  const known = knownLine(data, resolved.estimate);
  const covers = cause.kind.word === 'labour' || cause.kind.word === 'access';
  return [
    known === undefined ? actionOf(`Add ${data.line.kind} “${clip(data.line.title)}”, to be filled in`, code, added(data.line, cause, option, resolved), context) : actionOf(`Bring in ${known}`, code, [broughtIn(data.line, known, cause, option)], context),
    covers ? actionOf(`This line covers it: counts as ${topic}`, code, [countsAs(cause, [topic])], context) : undefined,
    !data.alone || cause === option || cause.values['countsAs'] !== undefined ? undefined : actionOf(`It is no such work: counts as ${NOTHING}`, code, [factBelow(cause.at, 'counts as', NOTHING)], context),
  ];
}

function isLacks(data: unknown): data is Lacks {
  return typeof data === 'object' && data !== null && 'topics' in data && 'line' in data && 'option' in data;
}

/** A named line of the estimate or of a shared file that would answer. */
function knownLine({ topics, line }: Lacks, { parts, sublets, labour }: Estimate): string | undefined {
  const list = { part: parts, sublet: sublets, labour }[line.kind];
  return list.find((one) => one.name !== undefined && topics.some((topic) => topicsOf(one).has(topic)))?.name;
}

/** Work brings its goods along; an option names everything else. */
function broughtIn({ kind }: MissingLine, name: string, cause: Record, option: Record): Change {
  return takesGoods(kind, cause) ? nameBehind(cause, 'uses', name) : nameBehind(option, OPTION_KEY[kind], name);
}

function added({ kind, name, title }: MissingLine, cause: Record, option: Record, { scope, records, estimate }: Resolved): Change[] {
  const rest = REST[kind];
  if (!takesGoods(kind, cause)) return [lineAtEnd(option, `${kind} "${title}" ${rest}`.trimEnd())];
  let free = name;
  for (let i = 2; scope.find('part', free) !== undefined || scope.find('sublet', free) !== undefined; i++) free = `${name}-${i}`;
  const own = records.filter((record) => record.block.uri === estimate.uri && record.kind.word === kind && record.block.statements.length === 1);
  return [nameBehind(cause, 'uses', free), lineBehind(own[own.length - 1] ?? cause, kind, free, title, rest)];
}

/** Named work and ways in say what they use; what stands inside an option is the option's own. */
function takesGoods(kind: MissingLine['kind'], { kind: { word }, name }: Record): boolean {
  return kind !== 'labour' && name !== undefined && (word === 'labour' || word === 'access');
}
