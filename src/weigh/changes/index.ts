/** Two versions of an estimate: what changed, and what each change does to each option. */
export type { Change, Changes, ChangeSort, Effect, FactMove, Follow, FollowSort, OptionPair, OptionState, Pick, Said, SideState, SideTrouble, Turn, Turned, TurnOfOption } from './types.js';
export { compareVersions, type Compared, type Found } from './changes.js';
export { textsWithChange, type Base } from './hybrid.js';
export { withTurns, MOST_TRIED, type TryTexts } from './turns.js';
