/** Two versions of an estimate: what changed, and what each change does to each option. */
export type { Change, Changes, ChangeSort, Effect, FactMove, Follow, OptionPair, OptionState, Pick, Said, SideState, Turn, Turned } from './types.js';
export { compareVersions, type Compared, type VersionRead } from './changes.js';
export { sameLines, type SameLine } from './same-line.js';
export { textsWithChange, type Base } from './hybrid.js';
export { withTurns, MOST_TRIED } from './turns.js';
