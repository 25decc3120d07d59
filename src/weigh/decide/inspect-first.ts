import type { Span } from '../../language/index.js';
import type { Chance, Estimate, Inspection } from '../../estimate/index.js';
import { zero, type Decimal } from '../../vocabulary/index.js';
import { constant, given, product, type Figure } from '../figure.js';
import type { Line } from '../line.js';
import type { Money } from '../money.js';
import { hoursLine } from '../price-labour.js';
import { fixedOf, total } from '../totals.js';
import type { Expected } from './expected.js';
import { jointTest, severalStates, type YesOrNo } from './information-several.js';
import { weighTest } from './information.js';
import type { ModelChance, OptionModel } from './model.js';

/** What a result of an inspection means for the choice. */
export interface ResultMeans {
  /** Titles of the chances that it shows; none where it shows nothing. */
  readonly shows: readonly string[];
  readonly chance: number;
  /** The option to choose then; undefined where the result can't come. */
  readonly choose: string | undefined;
  readonly changes: boolean;
}

/** Whether to look further before deciding. Sampled and averaged figures, never part of a quote. */
export interface InspectionWeighed {
  readonly inspection: Inspection;
  readonly price: Figure;
  /** What it saves on average, before its price. */
  readonly worth: number;
  readonly net: number;
  /** What knowing for certain would be worth. */
  readonly perfectWorth: number;
  readonly verdict: 'worth doing' | 'not worth its price' | 'cannot change the choice';
  /** The option to choose without it, by its average cost. */
  readonly choose: string;
  readonly results: readonly ResultMeans[];
}

/** Whether a line of it could not be read: what it costs or shows would be left out, and it would look better than it is. */
export function isUnread({ record }: Inspection): boolean {
  return record.broken || record.children.some(({ broken }) => broken);
}

/** Undefined where a line of it can't be read, where it tells no chance apart that an option has, or there is nothing to choose between. */
export function inspectFirst(inspection: Inspection, models: readonly OptionModel[], expected: ReadonlyMap<OptionModel, Expected>, estimate: Estimate, money: Money): InspectionWeighed | undefined {
  if (isUnread(inspection)) return undefined;
  const finds = inspection.finds.filter(({ chance }) => models.some(({ chances }) => chances.some((one) => one.chance === chance)));
  if (finds.length === 0 || models.length < 2) return undefined;
  const tested = finds.map(({ chance }) => chance);
  const joint = severalStates(withThoseAbove(tested, models), tested.length);
  if (joint.kind === 'refused') return undefined;
  const share = (of: { readonly likely: Decimal } | undefined) => (of === undefined ? 0 : of.likely.toNumber() / 100);
  const looks = jointTest(joint, finds.map(({ shows, wrongly }) => ({ finds: share(shows), wrongly: share(wrongly) })));
  if (looks.kind === 'refused') return undefined;
  const price = priceOf(inspection, estimate, money);
  const given = joint.states.map(({ happens }) => new Map<Span, boolean>(tested.map((chance, i) => [chance.at, happens[i] === true])));
  const answer = weighTest({
    goal: 'least',
    states: joint.states,
    actions: models.map((model) => ({ name: model.weighed.option.name, values: given.map((state) => (expected.get(model) as Expected)(state)) })),
    test: { price: price.likely.toNumber(), results: looks.results },
  });
  if (answer.kind === 'refused') return undefined;
  const name = (index: number) => (models[index] as OptionModel).weighed.option.name;
  return {
    inspection, price,
    worth: answer.worth,
    net: answer.net,
    perfectWorth: answer.perfectWorth,
    verdict: answer.verdict,
    choose: name(answer.best),
    results: answer.results.map((result, i) => ({
      shows: tested.filter((_, k) => looks.results[i]?.shows[k] === true).map(({ title }) => title),
      chance: result.chance,
      choose: result.best === undefined ? undefined : name(result.best),
      changes: result.changes,
    })),
  };
}

/** Some chances, and behind them all others that they hang on, each as the first option has it that has it at all. */
function withThoseAbove(tested: readonly Chance[], models: readonly OptionModel[]): readonly YesOrNo[] {
  const all = [...tested];
  const placeOf = (chance: Chance): number => {
    const known = all.indexOf(chance);
    return known >= 0 ? known : all.push(chance) - 1;
  };
  const rows: YesOrNo[] = [];
  // Grows while it is gone through.
  for (const chance of all) {
    const { chances } = models.find((model) => model.chances.some((one) => one.chance === chance)) as OptionModel;
    const { likelihood, under } = chances.find((one) => one.chance === chance) as ModelChance;
    rows.push({ name: chance.title, chance: likelihood, under: under.map((place) => placeOf((chances[place] as ModelChance).chance)) });
  }
  return rows;
}

/** The hours and the price of the inspection with tax, without the shop's percentage fees. */
function priceOf({ title, name, at, record, hours, rate, price }: Inspection, { shop }: Estimate, money: Money): Figure {
  const feeOf = (amount: Figure): Line => ({ kind: 'fee', share: 'work', title, name, at, record, amount, hours: undefined, quantity: undefined, condition: undefined, with: [] });
  const work = hours === undefined || rate === undefined ? [] : [hoursLine(title, hours, rate, { at, record }, money)];
  const fee = price === undefined ? [] : [feeOf(product(title, [given('Price', 'money', price)], money, price.at))];
  if (work.length + fee.length === 0) return constant(title, 'money', zero);
  return total(title, work, [], fixedOf(fee), [], { ...shop, fees: [] }, money).total;
}
