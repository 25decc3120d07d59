// What each figure of the panel has to be, by the JSON.
import assert from 'node:assert/strict';
import { Decimal } from 'decimal.js';
import type { Leaves } from './leaves.js';

/** A figure of the page with what stands around it. */
interface Shown {
  readonly id: string;
  readonly text: string;
  /** All of its cell or list item, and of its row. */
  readonly cell: string;
  readonly cells: readonly string[];
  readonly section: string | undefined;
  readonly row: string | undefined;
  readonly body: string | undefined;
  readonly column: string | undefined;
}

/** What was read off the page. */
export interface Walked {
  readonly figures: readonly Shown[];
  readonly lists: readonly { readonly key: string; readonly sum: string; readonly foot: readonly string[]; readonly groups: readonly { readonly key: string; readonly sum: string }[] }[];
  readonly numbers: readonly { readonly key: string; readonly rows: readonly (readonly string[])[] }[];
  readonly sentences: { readonly verdict: string; readonly cautions: readonly string[]; readonly vehicle: string; readonly currency: string };
}

/** Holds all of a page against the JSON. Gives how many figures were held; throws at the first that differs. */
export function checkPage({ figures, lists, numbers, sentences }: Walked, json: Leaves): number {
  const digits = Number(json.take('currency.digits'));
  const write = writer(digits);
  let count = 0;
  const same = (found: string, expected: string, where: string): void => {
    count++;
    assert.equal(found, expected, where);
  };
  for (const one of figures) {
    const expected = expectedOf(one, json, write);
    for (const [found, wanted] of expected) same(found, wanted, `${one.id} in ${one.section ?? 'no section'}, row ${one.row ?? ''}`);
  }
  for (const { key, sum, foot, groups } of lists) {
    const of = `options.${key}`;
    same(sum, write.figure(json, `${of}.figures.total`), `${key}, its list`);
    same(foot[1] ?? '', write.figure(json, `${of}.figures.hours`), `${key}, hours below its list`);
    same(foot[2] ?? '', write.figure(json, `${of}.figures.total`), `${key}, total below its list`);
    for (const group of groups) same(group.sum, write.figure(json, `${of}.figures.${group.key}`), `${key}, ${group.key} in its list`);
    const taxes = figures.filter(({ id, section }) => section === 'lines' && id.startsWith(`${key}.tax.`)).map(({ cells }) => new Decimal((cells.at(-1) ?? '').replaceAll(',', '')));
    same(taxes.reduce((total, one) => total.plus(one), new Decimal(0)).toFixed(digits), json.take(`${of}.figures.tax.likely`), `${key}, its taxes`);
  }
  for (const table of numbers) for (const [found, wanted, where] of numbersOf(table, json, write)) same(found, wanted, `${table.key} in numbers, ${where}`);
  same(sentences.verdict, spaced(json.take('verdict')), 'the verdict');
  same(sentences.vehicle, spaced(json.take('vehicle')), 'the vehicle');
  same(sentences.currency, json.take('currency.code'), 'the currency');
  sentences.cautions.forEach((one, i) => same(one, spaced(json.take(`cautions.${i}`)), 'a caution'));
  return count;
}

type Pair = readonly [found: string, wanted: string];
type Write = ReturnType<typeof writer>;
const spaced = (text: string): string => text.replace(/\s+/g, ' ').trim();

function expectedOf(one: Shown, json: Leaves, write: Write): readonly Pair[] {
  const { id, text, cell, cells, section, row = '', body, column } = one;
  const [, name = '', rest = ''] = /^([^.]+)\.(.+)$/.exec(id) ?? [];
  const of = `options.${name}`;
  const index = Number(/\.(\d+)$/.exec(id)?.[1] ?? 0) - 1;
  if (rest === 'head') return [[text, spaced(json.take(`${of}.title`))]];
  switch (section) {
    case 'figures':
      if (row === 'low' || row === 'high') return [[text, write.money(json.take(`${of}.figures.total.${row}`))]];
      if (row === 'more') return [[text, write.money(above(json, name))]];
      if (row === 'ready') return [[cell, readyWords(json.take(`${of}.calendar.ready`), json.take(`${of}.calendar.latest`))]];
      if (row === 'warranty') return [[text, json.take(`${of}.warranty`)]];
      if (row === 'days') json.take(`${of}.calendar.days.likely`);
      return [[text, write.figure(json, `${of}.figures.${row}`)]];
    case 'sure':
      if (rest.startsWith('moves.')) return [[text, spaced(json.take(`${of}.risk.contributions.${index}.title`))], [shareBefore(cell, text), write.share(json.take(`${of}.risk.contributions.${index}.share`), shareBefore(cell, text))]];
      if (row === 'cheapest' || row === 'trouble') return [[text, write.share(json.take(`${of}.risk.${row}`), text)]];
      if (row === 'average') return [[text, write.about(json.take(`${of}.average`), text)]];
      if (body === 'ready') return [[text, json.has(`${of}.risk.ready.${row}`) ? json.take(`${of}.risk.ready.${row}`) : `${new Decimal(json.take(`${of}.risk.days.${row}`)).toFixed()} d`]];
      return [[text, write.about(json.take(`${of}.risk.inAll.${row}`), text)]];
    case 'flips': return [[text, spaced(json.take(`flips.${index}.sentence`))]];
    case 'inspect': json.take(`inspections.${index}.title`); return [[text, spaced(json.take(`inspections.${index}.sentence`))]];
    case 'coverage': json.take(`coverages.${index}.title`); return [[text, spaced(json.take(`coverages.${index}.sentence`))]];
    case 'calendar': {
      const task = `${of}.calendar.tasks.${index}`;
      const technician = json.take(`${task}.technician`);
      const waits = json.take(`${task}.holdsAll`) === 'true' ? 'wait: no work uses it, so all further work waits' : 'wait';
      const slack = json.take(`${task}.critical`) === 'true' ? 'critical' : json.take(`${task}.counts`) === 'true' ? `${write.decimals(json.take(`${task}.slack`), 1, 1)} h` : 'holds nothing up';
      json.take(`${task}.slack`);
      const day = (key: 'from' | 'to', hours: 'start' | 'end') => (json.take(`${task}.${key}`) === 'null' ? `hour ${write.decimals(json.take(`${task}.${hours}`), 1, 1)}` : dayWords(json.take(`${task}.${key}`)));
      const wanted = [spaced(json.take(`${task}.title`)), day('from', 'start'), day('to', 'end'), technician === 'null' ? waits : `technician ${technician}`, slack];
      return wanted.map((want, i): Pair => [cells[i] ?? '', want]);
    }
    case 'months':
      if (row === 'downtime') return [[text, write.figure(json, `${of}.downtime`)]];
      if (row === 'lasts') return [[text, `${write.decimals(json.take(`${of}.monthly.months`), 0, 1)} months`]];
      return [[text, write.figure(json, `${of}.monthly.${row}`)]];
    case 'ways': {
      const plan = index === 0 ? `${of}.ways.chosen` : `${of}.ways.others.${index - 1}`;
      return [[cells[1] ?? '', write.money(json.take(`${plan}.total`))], [cells[2] ?? '', write.hours(json.take(`${plan}.hours`))]];
    }
    case 'open': {
      const job = `${of}.open.${index}`;
      json.take(`${job}.job`);
      const title: Pair = [cells[0] ?? '', spaced(json.take(`${job}.title`))];
      if (column === '.alone') return [title, [text, write.figure(json, `${job}.alone`)]];
      // What a job alone would cost is shown once; it is the same with every option.
      json.take(`${job}.alone.likely`);
      const saved = new Decimal(json.take(`${job}.saved.likely`));
      return [title, [cell, `${write.figure(json, `${job}.now`)}${saved.gt(0) ? ` saves ${write.figure(json, `${job}.saved`)}` : ''}`]];
    }
    case 'lines': {
      if (rest.startsWith('tax.')) return [];
      const line = `${of}.lines.${index}`;
      const hours = json.has(`${line}.hours.likely`) ? write.figure(json, `${line}.hours`) : '';
      return [[text, spaced(json.take(`${line}.title`))], [cells.at(-2) ?? '', hours], [cells.at(-1) ?? '', write.figure(json, `${line}.amount`)]];
    }
    case 'shop': {
      if (rest.startsWith('line.')) return [[text, spaced(json.take(`${of}.lines.${index}.title`))]];
      if (row === 'hour') return [[text, write.money(json.take(`${of}.shopOnly.perHour`))]];
      if (row === 'day') return [[text, write.money(json.take(`${of}.shopOnly.perBayDay`))]];
      if (row === 'all') return [[text, write.figure(json, `${of}.shopOnly.total`)]];
      const by = [0, 1, 2].find((i) => json.has(`${of}.shopOnly.by.${i}.sort`) && json.take(`${of}.shopOnly.by.${i}.sort`) === row) ?? 0;
      return [[text, write.figure(json, `${of}.shopOnly.by.${by}.margin`)]];
    }
    // What was found is not part of the report in JSON.
    case 'findings': return [];
    default: throw new Error(`Nothing says what “${text}” (${id}) in the section ${section ?? ''} should be.`);
  }
}

/** The numbers of the charts: the same figures once more, by the titles of the options. */
function numbersOf({ key, rows: [head = [], ...rows] }: Walked['numbers'][number], json: Leaves, write: Write): readonly (readonly [...Pair, where: string])[] {
  const nameOf = (title: string): string => json.options().find((name) => spaced(json.take(`options.${name}.title`)) === title) ?? `(${title})`;
  const points = ['p10', 'p50', 'p90'] as const;
  switch (key) {
    case 'costs-drawn': {
      const paths: Readonly<Record<string, string>> = { 'Access penalty': 'penalty.likely', 'Worth given up': 'given-up.likely', 'Cost in all': 'in-all.likely', 'if everything comes in low': 'in-all.low', 'if everything comes in high': 'in-all.high' };
      return rows.flatMap(([label = '', ...cells]) => {
        const path = paths[label];
        return path === undefined ? [] : cells.map((cell, i) => [cell, write.money(json.take(`options.${nameOf(head[i + 1] ?? '')}.figures.${path}`)), label] as const);
      });
    }
    case 'curves-drawn': return rows.flatMap(([title = '', quoted = '', , ...more]) => [
      [quoted, write.about(json.take(`options.${nameOf(title)}.figures.in-all.likely`), quoted), title] as const,
      ...points.map((point, i) => [more[i] ?? '', write.about(json.take(`options.${nameOf(title)}.risk.inAll.${point}`), more[i] ?? ''), `${title} ${point}`] as const),
    ]);
    // Told again from the sentences above it, in pieces.
    case 'flips-drawn': return [];
    default: throw new Error(`Nothing says what the numbers of ${key} should be.`);
  }
}

/** Over the cheapest in all. */
function above(json: Leaves, name: string): string {
  const inAll = (option: string): Decimal => new Decimal(json.take(`options.${option}.figures.in-all.likely`));
  const pick = json.take('pick');
  return inAll(name).minus(inAll(pick)).toFixed(Number(json.take('currency.digits')));
}

/** The share that stands before a title. */
function shareBefore(cell: string, text: string): string {
  return cell.slice(0, cell.indexOf(text)).trim();
}

const weekday = (date: string): string => new Date(`${date}T00:00:00Z`).toLocaleDateString('en-GB', { weekday: 'short', timeZone: 'UTC' });
const dayWords = (date: string): string => `${weekday(date)} ${date}`;

function readyWords(ready: string, latest: string): string {
  const late = latest === 'null' || latest === ready ? '' : `to ${weekday(latest)} ${latest.slice(0, 5) === ready.slice(0, 5) ? latest.slice(5) : latest}`;
  return `${ready}${weekday(ready)}${late}`;
}

function writer(digits: number) {
  const decimals = (value: string, least: number, most: number): string =>
    new Intl.NumberFormat('en-US', { minimumFractionDigits: least, maximumFractionDigits: most }).format(value as `${number}`);
  const money = (value: string): string => decimals(value, digits, Math.max(digits, 6));
  const hours = (value: string): string => `${decimals(value, 1, 2)} h`;
  /** Whole, and no farther off than rounding once more may bring it: the JSON is rounded to the coin. */
  const near = (value: Decimal, shown: string, wanted: string): string => {
    const found = new Decimal(shown.replace(/[^\d.-]/g, '') || NaN);
    return found.minus(value).abs().lte('0.51') ? shown : wanted;
  };
  return {
    decimals, money, hours,
    figure(json: Leaves, path: string): string {
      const value = json.take(`${path}.likely`);
      switch (json.take(`${path}.unit`)) {
        case 'money': return money(value);
        case 'hours': return hours(value);
        case 'days': return `${decimals(value, 0, 2)} d`;
        default: throw new Error(`No unit at ${path}.`);
      }
    },
    about: (value: string, shown: string): string => near(new Decimal(value), shown, decimals(value, 0, 0)),
    share(value: string, shown: string): string {
      // What goes with a line may be a little more than all of the spread, where others go against it.
      const percent = Decimal.min(100, new Decimal(value).times(100));
      if (shown === 'under 1 %') return percent.lt('0.55') ? shown : `${percent.toFixed()} %`;
      if (shown === 'over 99 %') return percent.gt('99.45') ? shown : `${percent.toFixed()} %`;
      return /^\d+ %$/.test(shown) ? near(percent, shown, `${percent.toFixed(0)} %`) : `${percent.toFixed(0)} %`;
    },
  };
}
