import { Holders, type Holder, type Span } from '../language/index.js';
import type { Amount, cautionTopics, Name, Readings } from '../vocabulary/index.js';
import type { Condition, Fee, Rate, Tool } from './shop-types.js';
import type { Source } from './source.js';

export type CautionTopic = keyof typeof cautionTopics;

export interface Finding extends Source {
  readonly name: string | undefined;
  readonly title: string;
  readonly compression: Readings | undefined;
  readonly leakage: Readings | undefined;
  readonly debris: 'none' | 'magnetic' | 'non-magnetic' | undefined;
  readonly seenBy: string | undefined;
  readonly pictures: readonly Picture[];
  /** Names of the options and the work that it speaks against, each once. */
  readonly rulesOut: readonly string[];
}

/** A picture file that a finding names. `uri` is undefined where it lies outside the workspace or is no picture. */
export interface Picture {
  readonly path: string;
  readonly uri: string | undefined;
  readonly at: Span;
}

/** What the room of calculations keeps by what is priced. */
export const heldByPriced = new Holders();

/** How long a job takes with a set of ways in; an empty set is in the car. */
export interface Mode extends Holder {
  readonly hours: Amount;
  readonly with: readonly Access[];
  readonly at: Span;
}

export interface Access extends Source {
  readonly name: string;
  readonly title: string;
  /** Every way in that this one gives as well, without itself. */
  readonly includes: readonly Access[];
  readonly remove: Amount | undefined;
  readonly refit: Amount | undefined;
  readonly rate: Rate | undefined;
  readonly tools: readonly Tool[];
  readonly parts: readonly Part[];
  readonly sublets: readonly Sublet[];
  readonly cautions: readonly CautionTopic[];
}

/** Something that may turn up, and the work it then takes. Belongs to the work, way in or option it is written below. */
export interface Chance extends Source {
  readonly name: string | undefined;
  readonly title: string;
  /** In percent; of the chance above where it stands below one. */
  readonly percent: Amount | undefined;
  /** While all is open, so that the way in is shared; or as a comeback, so that it is paid again. */
  readonly when: 'open' | 'comeback';
  /** Every job once, with those that they need; parts and outside work with what the jobs bring. */
  readonly labour: readonly Labour[];
  readonly parts: readonly Part[];
  readonly sublets: readonly Sublet[];
  readonly fees: readonly Fee[];
  readonly chances: readonly Chance[];
}

export interface Labour extends Source, Holder {
  readonly name: string | undefined;
  readonly title: string;
  readonly count: Amount | undefined;
  readonly modes: readonly Mode[];
  readonly rate: Rate | undefined;
  /** Jobs that must be done for this one, named on its own line only. */
  readonly needs: readonly Labour[];
  readonly tools: readonly Tool[];
  readonly parts: readonly Part[];
  readonly sublets: readonly Sublet[];
  readonly because: readonly Finding[];
  /** Names of work, outside work and parts that it waits for; what an option does not have is not waited for. */
  readonly after: readonly Name[];
  /** Of its hours, those until things are apart. */
  readonly apart: Amount | undefined;
  readonly done: 'first' | 'last' | undefined;
  readonly cautions: readonly CautionTopic[];
}

export interface Keep extends Source {
  readonly title: string;
  readonly less: Amount | undefined;
  readonly worth: Amount | undefined;
}

export interface Core extends Source {
  readonly charge: Amount | undefined;
  readonly due: Amount | undefined;
  readonly less: Amount | undefined;
  readonly assemble: Amount | undefined;
  readonly rate: Rate | undefined;
  readonly keeps: readonly Keep[];
}

export interface Part extends Source, Holder {
  readonly name: string | undefined;
  readonly title: string;
  readonly quantity: Amount | undefined;
  readonly price: Amount | undefined;
  readonly cost: Amount | undefined;
  readonly condition: Condition | undefined;
  readonly arrives: Amount | undefined;
  readonly warranty: Amount | undefined;
  readonly core: Core | undefined;
}

export interface Sublet extends Source {
  readonly name: string | undefined;
  readonly title: string;
  readonly quantity: Amount | undefined;
  readonly price: Amount | undefined;
  readonly cost: Amount | undefined;
  readonly backIn: Amount | undefined;
  readonly after: readonly Name[];
  readonly warranty: Amount | undefined;
}

export interface Harvest extends Source {
  readonly title: string;
  readonly value: Amount | undefined;
}
