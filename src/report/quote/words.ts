import type { Condition } from '../../estimate/index.js';
import type { GroupKind, QuoteFinding, QuoteTax, RuleType, WhyAbsent } from './types.js';

/** What a quote says, for someone who knows nothing of engines. */

export const groupTitles: Readonly<Record<GroupKind, string>> = {
  access: 'Getting to the work and closing up again',
  labour: 'Work on the vehicle',
  parts: 'Parts',
  outside: 'Outside work',
  fees: 'Fees',
  deposits: 'Deposit on old parts',
};

export const groupWords: Readonly<Record<GroupKind, string>> = {
  access: 'To reach the fault, other things must first come off or the engine must be raised or taken out, and all of it goes back afterwards. You pay this once, for all the work below.',
  labour: 'The hours that the work itself takes in our shop.',
  parts: 'What we fit, each with its condition.',
  outside: 'Work that we give to another firm, such as a machine shop, because it is not done in ours.',
  fees: 'Charges that belong to the job as a whole.',
  deposits: 'The supplier asks for this until the old part comes back to be rebuilt; the trade calls it a core charge. You pay it now. What comes back, and when, stands below.',
};

export const conditionWords: Readonly<Record<Condition, string>> = {
  new: 'new',
  aftermarket: 'new, by another maker',
  rebuilt: 'rebuilt',
  used: 'used',
  'customer-supplied': 'brought by you: fitted, not charged',
};

/** Of a stage: the hours of putting back, beyond closing the ways in. */
export const PUT_TOGETHER = 'Putting together again what was taken apart';

export const NO_CONDITION = 'condition not stated';

export const taxedWords: Readonly<Record<QuoteTax['on'][number], string>> = { parts: 'parts', labour: 'work', sublets: 'outside work', fees: 'fees', deposits: 'deposits' };

export const debrisWords: Readonly<Record<NonNullable<QuoteFinding['debris']>, string>> = {
  none: 'In the oil pan and the filter: nothing was found.',
  magnetic: 'In the oil: pieces of iron or steel.',
  'non-magnetic': 'In the oil: pieces that are not iron or steel.',
};

export const COMPRESSION_MEANS = 'Compression is the pressure that each cylinder builds up. In a sound engine the readings lie close together.';
export const LEAKAGE_MEANS = 'Leakage is the share of air that gets out of a closed cylinder. Less is better.';

export const absentWords: Readonly<Record<WhyAbsent, string>> = {
  missing: 'the picture file is not there',
  outside: 'the picture file lies outside the folder of the estimate and was not read',
  'too-large': 'the picture file is too large to be sent along',
  'too-many': 'left out, since there are more pictures than can be sent along',
  'no-picture': 'the file is not a picture that can be shown',
};

export const ruleWords: Readonly<Record<RuleType, string>> = {
  estimates: 'written estimates: what they say, how long they hold, who authorises work and what is asked before more is charged',
  tax: 'tax on parts, work and fees',
  deposits: 'tax on a deposit that comes back',
  conditions: 'how used, rebuilt and remanufactured parts are described',
  outside: 'work that is given to another firm',
  warranty: 'warranty on repairs and on parts',
  waste: 'used oil, coolant and other waste',
  refrigerant: 'refrigerant, and who may handle it',
};
