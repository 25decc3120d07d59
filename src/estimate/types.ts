import type { Amount, Record } from '../vocabulary/index.js';
import type { Authorised, Closed, Quoted, Started } from './job-types.js';
import type { Coverage, Inspection, Option, Stage } from './option-types.js';
import type { Fee, Shop, Tool } from './shop-types.js';
import type { Source } from './source.js';
import type { Access, Chance, Finding, Labour, Part, Sublet } from './work-types.js';

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
