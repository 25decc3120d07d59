import type { Span } from '../../language/index.js';
import type { Change, Changes, ChangeSort, Effect, OptionState } from '../../weigh/changes/index.js';
import { zero, type Decimal } from '../../vocabulary/index.js';
import { changeWords, followWords, nameOf, turnWords } from '../changes/change-words.js';
import { isNothing, NOTHING_CHANGED, pickSentence, readySentence, warnings } from '../changes/whole-words.js';
import { moneyText } from '../numbers.js';
import type { SarifFile } from './artifacts.js';
import { sarifLog, type SarifFinding, type SarifPlace } from './log.js';
import type { SarifRule } from './rules.js';
import type { SarifLog } from './types.js';

type ChangeRule = `change-${ChangeSort | 'follows'}`;

const TITLES: Readonly<Record<ChangeRule, string>> = {
  'change-came': 'A line is new',
  'change-went': 'A line is gone',
  'change-moved': 'What a line says is other',
  'change-renamed': 'A line has another name or title',
  'change-elsewhere': 'A line stands elsewhere',
  'change-follows': 'Something follows from the changes',
};

/** What is needed beside the changes. */
export interface ChangesSarifInput {
  readonly version: string;
  readonly exitCode: number;
  /** The file of the new version, and what the two versions are called, without a path of the machine. */
  readonly file: SarifFile;
  readonly names: { readonly before: string; readonly after: string };
  /** Where a span of the new version stands. */
  readonly placeOf: (span: Span) => SarifPlace | undefined;
}

/**
 * What changed as a SARIF log: each change a note where the new version has it, with its effects in words and as data. What is gone
 * is told of the new version's file as a whole: a place in the old one would be looked up in the new text.
 */
export function changesSarif(changes: Changes, { version, exitCode, file, names, placeOf }: ChangesSarifInput): SarifLog {
  const at = (span: Span | undefined): SarifFinding['at'] => (span === undefined ? undefined : placeOf(span)) ?? { file };
  const findings: SarifFinding[] = [
    ...changes.changes.map((change): SarifFinding => ({
      ...noteOf(`change-${change.sort}`, [changeWords(change), effectWords(change.effects, changes), ...turnWords(change, changes)]),
      at: at(change.sort === 'went' && change.link === undefined ? undefined : change.after?.at),
      words: wordsOf(change),
      properties: { change: changeData(change), effects: effectsData(change.effects, changes) },
    })),
    ...changes.follows.filter(({ effects }) => moves(effects)).map((follow): SarifFinding => ({
      ...noteOf('change-follows', [followWords(follow, changes), effectWords(follow.effects, changes)]),
      at: at(follow.of === undefined ? undefined : changes.options[follow.of.option]?.after?.at),
      words: followWords({ ...follow, of: undefined }, changes),
      properties: { follows: follow.sort, effects: effectsData(follow.effects, changes) },
    })),
  ];
  return sarifLog({ version, asked: [file], findings, rule: ruleOf, exitCode, successful: true, properties: wholeData(changes, names) });
}

function noteOf(rule: ChangeRule, sentences: readonly string[]): Pick<SarifFinding, 'rule' | 'severity' | 'text' | 'related' | 'fix'> {
  const text = sentences.filter((one) => one !== '').map((one) => `${one.charAt(0).toUpperCase()}${one.slice(1)}${/[.!?]$/.test(one) ? '' : '.'}`).join(' ');
  return { rule, severity: 'advice', text, related: [], fix: undefined };
}

function ruleOf(id: string): SarifRule {
  const says = { what: '', why: 'What it adds to the total of each option, and what it does to the day and the choice, is told beside it.', instead: '' };
  return { id, title: TITLES[id as ChangeRule], severity: 'advice', tags: ['changes'], manual: undefined, says, example: undefined };
}

/** `Totals: used +66.00, rebuild +12.50`. */
function effectWords(effects: readonly Effect[], changes: Changes): string {
  const parts = effects.flatMap(({ total }, i) => (total.isZero() ? [] : [`${nameOf(i, changes)} ${signed(total, changes)}`]));
  return parts.length === 0 ? '' : `Totals: ${parts.join(', ')}`;
}

function signed(amount: Decimal, { money }: Changes): string {
  return `${amount.gt(zero) ? '+' : ''}${moneyText(amount, money)}`;
}

function moves(effects: readonly Effect[]): boolean {
  return effects.some(({ total, inAll }) => !total.isZero() || !inAll.isZero());
}

function wordsOf({ before, after, link }: Change): string {
  const said = after ?? before;
  return [said?.kind, said?.name ?? said?.title, said?.under, link?.lead, link?.by.title].filter((one) => one !== undefined).join(' ');
}

function changeData({ sort, before, after, link, facts }: Change) {
  const said = (one: Change['before']) => (one === undefined ? null : { kind: one.kind, name: one.name ?? null, title: one.title, under: one.under ?? null });
  return { sort, before: said(before), after: said(after), link: link === undefined ? null : { lead: link.lead, by: said(link.by) }, facts: facts.map(({ fact, before: was, after: is }) => ({ fact, before: was ?? null, after: is ?? null })) };
}

/** Decimal digits, never binary floats; options that nothing moves are left out. */
function effectsData(effects: readonly Effect[], changes: Changes) {
  return effects.flatMap(({ total, inAll }, i) => (total.isZero() && inAll.isZero() ? [] : [{ option: nameOf(i, changes), total: digits(total, changes), inAll: digits(inAll, changes) }]));
}

function digits(amount: Decimal, { money }: Changes): string {
  return amount.toFixed(Math.max(money.currency.digits, amount.decimalPlaces()));
}

function wholeData(changes: Changes, names: ChangesSarifInput['names']) {
  const named = { ...changes, before: { ...changes.before, name: names.before }, after: { ...changes.after, name: names.after } };
  const state = (one: OptionState | undefined) => (one === undefined ? null : { total: digits(one.total, changes), inAll: digits(one.inAll, changes), ready: one.ready ?? null, complete: one.complete });
  return {
    ...names,
    currency: changes.money.currency.code,
    summary: [...warnings(named), ...(isNothing(named) ? [NOTHING_CHANGED] : []), pickSentence(named), readySentence(named)].filter((one) => one !== ''),
    options: changes.options.map((pair, i) => ({ name: nameOf(i, changes), before: state(pair.before), after: state(pair.after) })),
  };
}
