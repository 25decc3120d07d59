import type { Span } from '../language/index.js';
import type { Amount } from '../vocabulary/index.js';
import type { Fee, Rate } from './shop-types.js';
import type { Source } from './source.js';
import type { Access, CautionTopic, Chance, Finding, Harvest, Labour, Part, Sublet } from './work-types.js';

/** Work that comes before the decision, in every option. */
export interface Stage extends Source {
  readonly name: string;
  readonly title: string;
  /** Every job once, with those that they need; parts and outside work with what the jobs bring. */
  readonly labour: readonly Labour[];
  readonly parts: readonly Part[];
  readonly sublets: readonly Sublet[];
  /** The ways in that it opens; its work is done with these, whatever else is opened later. */
  readonly opens: readonly Access[];
  /** Hours to put together again what was taken apart, beyond closing the ways in. */
  readonly putBack: Amount | undefined;
  /** Of these hours. */
  readonly rate: Rate | undefined;
  readonly destroys: readonly Part[];
}

/** What stages together put into some work: their jobs, and the ways in that they opened. */
export interface Staged {
  readonly labour: readonly Labour[];
  readonly ways: readonly Access[];
  /** Closed again when the work is done, or left as they are, with nothing paid for putting back. */
  readonly then: 'closed' | 'left open';
}

export interface Option extends Source {
  readonly name: string;
  readonly title: string;
  /** Every job of the option once: its own, those it names, and those that these need. */
  readonly labour: readonly Labour[];
  /** Every part once: its own, those it names, and those that its jobs use. */
  readonly parts: readonly Part[];
  readonly sublets: readonly Sublet[];
  readonly fees: readonly Fee[];
  /** What comes before the decision; its labour is in `labour` too. Undefined without stages. */
  readonly staged: Staged | undefined;
  readonly harvests: readonly Harvest[];
  /** Its own; those of its work and ways in are found with these. */
  readonly chances: readonly Chance[];
  /** The pinned ways in; an empty list pins the engine in its place; undefined lets the planner choose. */
  readonly way: readonly Access[] | undefined;
  readonly wayAt: Span | undefined;
  readonly worth: Amount | undefined;
  readonly warranty: Amount | undefined;
  /** How long the vehicle is expected to serve after it, and what it then brings. */
  readonly lasts: Amount | undefined;
  readonly resale: Amount | undefined;
  readonly because: readonly Finding[];
  /** What was found that speaks against it, in the order of the file: it is weighed like the others, and is no choice. */
  readonly ruledOutBy: readonly Finding[];
  /** What the customer does not get for it, and remarks for the quote. */
  readonly leavesOut: readonly string[];
  readonly notes: readonly string[];
  readonly cautions: readonly CautionTopic[];
  /** False where nobody wrote it: selling the vehicle as it stands. */
  readonly written: boolean;
}

/** How well an inspection tells one chance apart. */
export interface Finds {
  readonly chance: Chance;
  readonly shows: Amount;
  readonly wrongly: Amount | undefined;
}

/** Something that could be looked at before deciding. */
export interface Inspection extends Source {
  readonly name: string;
  readonly title: string;
  readonly price: Amount | undefined;
  readonly hours: Amount | undefined;
  readonly rate: Rate | undefined;
  readonly finds: readonly Finds[];
}

/** A recall or the like, with what it says of the vehicles it holds for. */
export interface Coverage extends Source {
  readonly name: string | undefined;
  readonly title: string;
  readonly sort: 'recall' | 'campaign' | 'bulletin' | 'extended-warranty' | undefined;
  readonly builtFrom: string | undefined;
  readonly builtTo: string | undefined;
  readonly years: readonly number[];
  readonly upTo: Amount | undefined;
  readonly within: Amount | undefined;
  readonly until: string | undefined;
  /** Names of the work and options that it would pay for; empty where it doesn't say. */
  readonly covers: readonly string[];
}
