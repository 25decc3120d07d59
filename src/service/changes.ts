import { compareVersions, MOST_TRIED, textsWithChange, withTurns, type Base, type Changes, type Compared, type SideState, type VersionRead } from '../weigh/changes/index.js';
import type { Comparison } from '../weigh/index.js';
import type { LanguageService, Weighing } from './types.js';

/** One of two versions. Each has its own service, and with it its own shop file and its own version of everything. */
export interface Side {
  readonly service: LanguageService;
  readonly uri: string;
  /** What whoever asks calls it: a file, a revision. */
  readonly name: string;
}

/** What changed between two versions, and what each change does. Touches no file. */
export function changesBetween(before: Side, after: Side): Changes {
  const [one, other] = [before.service.weighing(before.uri), after.service.weighing(after.uri)];
  const compared = compareVersions(read(one), read(other));
  const sides = { before: { ...before, weighing: one }, after: { ...after, weighing: other } };
  const changes = withTurns(compared, (base, draft) => {
    const { service, uri, weighing } = sides[base];
    const [own, theirs] = base === 'before' ? [compared.before, compared.after] : [compared.after, compared.before];
    const from: Base = { side: base, things: own.things, uri, treeOf: service.tree };
    const texts = textsWithChange(draft, from, theirs.things, compared.matched);
    if (texts === undefined) return undefined;
    const tried = service.weighingTexts(uri, texts);
    return errorsIn(tried) > errorsIn(weighing) ? undefined : tried.comparison;
  });
  return {
    before: stateOf(before, one, compared, 'before'),
    after: stateOf(after, other, compared, 'after'),
    money: other.comparison.options.length === 0 ? one.comparison.money : other.comparison.money,
    comparable: compared.comparable,
    options: compared.options,
    changes,
    follows: compared.follows,
    mostTried: MOST_TRIED,
  };
}

function read({ resolved: { records }, comparison }: Weighing): VersionRead {
  return { records, comparison };
}

/** More errors than the version had: the change alone leaves something that can't be priced. */
function errorsIn({ resolved, comparison }: { readonly resolved: Weighing['resolved']; readonly comparison: Comparison }): number {
  return [...resolved.problems, ...comparison.problems].filter(({ severity }) => severity === 'error').length;
}

function stateOf({ service, uri, name }: Side, { resolved, comparison }: Weighing, { pick }: Compared, side: 'before' | 'after'): SideState {
  const missing = service.tree(uri) === undefined;
  const trouble = missing ? 'missing' : comparison.options.length > 0 ? undefined : resolved.problems.some(({ severity }) => severity === 'error') ? 'unreadable' : 'no-option';
  return { name, uri, title: comparison.estimate.header?.title ?? comparison.estimate.vehicle?.title, trouble, pick: pick[side] };
}
