import type { Change, Changes, Effect, OptionState, Said, SideState, Turned } from '../../weigh/changes/index.js';
import type { PlaceOf } from '../json-writer.js';
import { changeWords, followWords, nameOf } from './change-words.js';
import type { ChangesReport } from './changes-schema.js';
import { beyondSentence, isNothing, NOTHING_CHANGED, pickSentence, readySentence, warnings } from './whole-words.js';

type JsonChange = ChangesReport['changes'][number];

/** Where a line of either version stands; the two may have the same address. */
export interface PlacesOf {
  readonly before: PlaceOf;
  readonly after: PlaceOf;
}

/** What changed as plain data, in the form that `changesReport` describes. */
export function changesJson(changes: Changes, places: PlacesOf): ChangesReport {
  const { currency } = changes.money;
  const write = writerFor(changes, places);
  return {
    steelyard: 1,
    report: 'changes',
    before: sideJson(changes.before, write),
    after: sideJson(changes.after, write),
    currency: { code: currency.code === '' ? null : currency.code, digits: currency.digits },
    comparable: changes.comparable,
    options: changes.options.map(({ before, after }, i) => ({ name: nameOf(i, changes), before: stateJson(before, write, 'before'), after: stateJson(after, write, 'after') })),
    changes: changes.changes.map((one) => changeJson(one, write)),
    follows: changes.follows.map((one) => ({ sort: one.sort, sentence: followWords(one, changes), effects: write.effects(one.effects) })),
    sentences: (isNothing(changes) ? [...warnings(changes), NOTHING_CHANGED] : [...warnings(changes), pickSentence(changes), readySentence(changes), beyondSentence(changes)]).filter((one) => one !== ''),
  };
}

interface Writer {
  readonly changes: Changes;
  readonly coins: (value: OptionState['total']) => string;
  readonly effects: (effects: readonly Effect[]) => ChangesReport['follows'][number]['effects'];
  readonly at: (span: Said['at'], side: 'before' | 'after') => { readonly at?: NonNullable<ReturnType<PlaceOf>> };
}

function writerFor(changes: Changes, places: PlacesOf): Writer {
  const coins = (value: OptionState['total']) => value.toFixed(changes.money.currency.digits);
  return {
    changes, coins,
    effects: (effects) => effects.flatMap(({ total, inAll }, i) => (total.isZero() && inAll.isZero() ? [] : [{ option: nameOf(i, changes), total: coins(total), inAll: coins(inAll) }])),
    at: (span, side) => {
      const at = places[side](span);
      return at === undefined ? {} : { at };
    },
  };
}

function changeJson(change: Change, write: Writer): JsonChange {
  const { sort, before, after, link, facts, effects, alone, last } = change;
  return {
    sort,
    sentence: changeWords(change),
    before: saidJson(before, write, 'before'),
    after: saidJson(after, write, 'after'),
    link: link === undefined ? null : { word: link.lead, by: link.by.title },
    facts: facts.map((one) => ({ fact: one.fact, before: one.before ?? null, after: one.after ?? null })),
    effects: write.effects(effects),
    alone: turnJson(alone, write),
    last: turnJson(last, write),
  };
}

function saidJson(said: Said | undefined, { at }: Writer, side: 'before' | 'after'): JsonChange['before'] {
  return said === undefined ? null : { kind: said.kind, name: said.name ?? null, title: said.title, under: said.under ?? null, ...at(said.at, side) };
}

function turnJson(turned: Turned, { changes, coins }: Writer): JsonChange['alone'] {
  if (typeof turned === 'string') return { told: turned, options: [], pickBefore: null, pickAfter: null };
  const name = (index: number | undefined) => (index === undefined ? null : nameOf(index, changes));
  return {
    told: 'yes',
    options: turned.options.flatMap((one, i) => (one === undefined ? [] : [{
      option: nameOf(i, changes),
      daysBefore: one.days.before.toFixed(), daysAfter: one.days.after.toFixed(),
      readyBefore: one.ready.before ?? null, readyAfter: one.ready.after ?? null,
      inAllBefore: coins(one.inAll.before), inAllAfter: coins(one.inAll.after),
    }])),
    pickBefore: name(turned.pick.before),
    pickAfter: name(turned.pick.after),
  };
}

function stateJson(state: OptionState | undefined, { coins, at }: Writer, side: 'before' | 'after'): ChangesReport['options'][number]['before'] {
  if (state === undefined) return null;
  const { title, total, inAll, hours, days, ready, ways, complete, ruledOut } = state;
  return { title, total: coins(total), inAll: coins(inAll), hours: hours.toDecimalPlaces(6).toFixed(), days: days.toFixed(), ready: ready ?? null, ways: [...ways], complete, ruledOut: [...ruledOut], ...at(state.at, side) };
}

function sideJson({ name, title, trouble, pick }: SideState, { changes, coins }: Writer): ChangesReport['before'] {
  return {
    name, title: title ?? null, trouble: trouble ?? null,
    pick: pick === undefined ? null : { option: nameOf(pick.option, changes), inAll: coins(pick.inAll), less: pick.less === undefined ? null : coins(pick.less), next: pick.next === undefined ? null : nameOf(pick.next, changes) },
  };
}
