import { Holders, type Holder, type Span } from '../language/index.js';
import type { Amount, cautionTopics, Name, partConditions, Readings, Record } from '../vocabulary/index.js';
import type { Currency } from './currency.js';

/** Where an entity was written. Every figure of the calculations leads back to one of these. */
export interface Source {
  readonly record: Record;
  /** The head of the line. */
  readonly at: Span;
  /** True where part of the line could not be read: what is priced from it may be incomplete. */
  readonly broken: boolean;
}

export type Condition = keyof typeof partConditions;
export type CautionTopic = keyof typeof cautionTopics;
export type CoreTaxPolicy = 'kept' | 'refunded' | 'none';
export type Rounding = 'half-up' | 'half-even' | 'half-down';
export type Taxable = 'parts' | 'labour' | 'sublets' | 'fees';

export interface Rate extends Source {
  readonly name: string;
  readonly title: string;
  readonly price: Amount;
  /** What the hour costs the shop. */
  readonly cost: Amount | undefined;
}

/** One line of the markup table; `upTo` undefined means everything dearer. */
export interface MarkupBand extends Source {
  readonly percent: Amount;
  readonly upTo: Amount | undefined;
}

export interface Tax extends Source {
  readonly name: string;
  readonly title: string;
  readonly percent: Amount;
  readonly on: ReadonlySet<Taxable>;
  readonly basis: 'item' | 'invoice';
}

export interface CoreTax extends Source {
  readonly policy: CoreTaxPolicy;
}

export interface Shop {
  readonly source: Source | undefined;
  readonly title: string;
  /** For the head of a quote. */
  readonly address: readonly string[];
  readonly phone: string | undefined;
  /** BCP 47. */
  readonly locale: string;
  readonly currency: Currency;
  readonly rounding: Rounding;
  readonly workday: Amount | undefined;
  readonly technicians: number;
  /** 0 is Sunday, as in ISO 8601 modulo 7. */
  readonly closedWeekdays: ReadonlySet<number>;
  readonly closedDates: ReadonlySet<string>;
  readonly rates: ReadonlyMap<string, Rate>;
  readonly usualRate: Rate | undefined;
  /** Rising by `upTo`, the open band last. */
  readonly markup: { readonly parts: readonly MarkupBand[]; readonly sublets: readonly MarkupBand[] };
  readonly taxes: readonly Tax[];
  readonly coreTax: ReadonlyMap<Condition, CoreTax>;
  readonly fees: readonly Fee[];
  readonly tools: readonly Tool[];
  readonly overrun: Overrun | undefined;
}

/** How far work may run over what was authorised; the limits hold for a percentage. */
export interface Overrun extends Source {
  readonly by: { readonly percent: Amount; readonly atLeast: Amount | undefined; readonly atMost: Amount | undefined } | { readonly fixed: Amount };
}

export interface Tool extends Source {
  readonly name: string;
  readonly title: string;
  readonly owned: boolean;
  readonly price: Amount | undefined;
  readonly arrives: Amount | undefined;
}

export interface Finding extends Source {
  readonly name: string | undefined;
  readonly title: string;
  readonly compression: Readings | undefined;
  readonly leakage: Readings | undefined;
  readonly debris: 'none' | 'magnetic' | 'non-magnetic' | undefined;
  readonly seenBy: string | undefined;
  readonly pictures: readonly Picture[];
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

export interface Fee extends Source {
  readonly name: string | undefined;
  readonly title: string;
  readonly quantity: Amount | undefined;
  readonly price: Amount | undefined;
  readonly percent: Amount | undefined;
  readonly of: readonly ('labour' | 'parts' | 'sublets')[];
  readonly cap: Amount | undefined;
}

export interface Harvest extends Source {
  readonly title: string;
  readonly value: Amount | undefined;
}

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

/** What a record of the job is about: an amount for an option or a stage, on a day. What it doesn't say is undefined. */
interface ForOption extends Source {
  readonly amount: Amount | undefined;
  /** The name of an option or a stage, or of the only option where nothing was said; undefined where nothing has that name. */
  readonly for: string | undefined;
  /** YYYY-MM-DD. */
  readonly on: string | undefined;
}

/** What the customer was given to read. */
export type Quoted = ForOption;

/** What the customer agreed to, as a whole amount. */
export interface Authorised extends ForOption {
  readonly by: string | undefined;
  readonly how: 'in-person' | 'phone' | 'message' | 'email' | 'signed' | undefined;
  readonly version: string | undefined;
}

/** That work began. */
export interface Started extends Source {
  readonly on: string | undefined;
}

/** What one line really took or cost. */
export interface Actual<L> extends Source {
  /** The name or the title by which it is meant. */
  readonly says: string;
  /** What it stands for; undefined where neither the option nor what may turn up in it has such a line. */
  readonly line: L | undefined;
  /** One figure: where three are written, the likely one. Hours may be in minutes. */
  readonly amount: Amount;
}

/** What a job that is over really took. No quoted figure is made from it. */
export interface Closed extends Source {
  /** The option that was done; undefined where nothing was. */
  readonly option: Option | undefined;
  /** YYYY-MM-DD. */
  readonly on: string | undefined;
  readonly billed: Amount | undefined;
  readonly clocked: readonly Actual<Labour | Access | Core>[];
  readonly paid: readonly Actual<Part | Sublet | Fee>[];
  readonly credited: readonly Actual<Part>[];
  readonly notes: readonly string[];
}

export interface Header extends Source {
  readonly title: string;
  readonly written: string | undefined;
  readonly start: string | undefined;
  readonly valid: Amount | undefined;
  /** How long the customer takes to say yes. */
  readonly answer: Amount | undefined;
  readonly technicians: number | undefined;
  /** For a year, in percent. */
  readonly interest: Amount | undefined;
}

export interface Vehicle extends Source {
  readonly title: string;
  readonly vin: string | undefined;
  readonly built: string | undefined;
  readonly modelYear: number | undefined;
  readonly odometer: Amount | undefined;
  readonly worth: Amount | undefined;
  /** What it brings as it stands. */
  readonly unrepaired: Amount | undefined;
  /** What a day without it costs the customer. */
  readonly downtime: Amount | undefined;
}

/** An estimate with its shared files read and every name resolved. Immutable. */
export interface Estimate {
  readonly uri: string;
  readonly shop: Shop;
  readonly header: Header | undefined;
  readonly vehicle: Vehicle | undefined;
  readonly findings: readonly Finding[];
  readonly access: readonly Access[];
  /** What may happen on a job or a way in, by its record. Kept beside them, since the work of a chance may name that same job or way in. */
  readonly chances: ReadonlyMap<Record, readonly Chance[]>;
  readonly labour: readonly Labour[];
  readonly parts: readonly Part[];
  readonly sublets: readonly Sublet[];
  readonly fees: readonly Fee[];
  readonly tools: readonly Tool[];
  readonly stages: readonly Stage[];
  readonly options: readonly Option[];
  readonly consider: readonly Labour[];
  readonly inspections: readonly Inspection[];
  readonly coverages: readonly Coverage[];
  /** In the order of the file. */
  readonly quoted: readonly Quoted[];
  readonly authorised: readonly Authorised[];
  readonly started: Started | undefined;
  readonly closed: Closed | undefined;
  readonly notes: readonly string[];
}

