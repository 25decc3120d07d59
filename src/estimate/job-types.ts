import type { Amount } from '../vocabulary/index.js';
import type { Option } from './option-types.js';
import type { Fee } from './shop-types.js';
import type { Source } from './source.js';
import type { Access, Core, Labour, Part, Sublet } from './work-types.js';

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
