import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quoteForms, sheetForm, supplementOf, supplementSheetOf, type QuoteForm, type Supplement } from '../../src/report/quote/index.js';
import { TEXT_WIDTH } from '../../src/report/quote/text-form.js';
import { widthOf } from '../../src/report/index.js';
import { Decimal } from '../../src/vocabulary/index.js';
import { decide } from '../../src/weigh/index.js';
import { estimateOf, HOSTILE } from '../support/hostile.js';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT } from '../support/random-runs.js';
import { read } from '../weigh/weighed.js';

const forms = Object.keys(quoteForms) as QuoteForm[];
const AUTHORISED = (name: string, amount = '500') => `authorised ${amount} for ${name} on 2026-11-25 by "the owner" phone\n`;

function made(text: string, name: string | undefined, before: string | undefined): Supplement {
  const { comparison, records } = versionOf(text);
  const found = supplementOf(decide(comparison), name, before === undefined ? undefined : { before: versionOf(before), records });
  if (found.kind !== 'supplement') throw new Error(found.kind);
  return found.supplement;
}

function versionOf(text: string) {
  const { resolved: { records }, comparison } = read(text);
  return { records, comparison };
}

function changesOf({ news }: Supplement): string[] {
  if (news.kind !== 'listed') throw new Error(news.why);
  return [...news.lines.map(({ kind, line, was, before = '–', now = '–', more }) => `${kind} ${line.title}${was === undefined ? '' : `, before ${was}`}: ${before} → ${now} (${more})`), ...news.taxes.map(({ title, before, now, more }) => `tax ${title}: ${before} → ${now} (${more})`)];
}

const THEN = `steelyard 1
shop "Bench"
  currency USD
  rate bench 100.00 usual  cost 41.37
  markup 50%
  tax sales "Sales tax" 10% on parts
  fee supplies "Supplies" 5% of labour cap 45.00
finding seen "Seen on the lift"
access out "Engine out"
  remove 2 h
  refit 3 h
labour head "Rear head" 8 h with out
option repair "Repair the head"
  do head
  part "Gasket" cost 61.34 new
  part "Stud" 4.00 new
  part "Stud" 6.00 new
`;

describe('what is new, line by line', () => {
  const change = (...edits: readonly (readonly [string, string])[]) => edits.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(from);
    return text.replace(from, to);
  }, THEN);
  const news = (now: string) => changesOf(made(now + AUTHORISED('repair'), undefined, THEN));

  test.each<[string, string, readonly string[]]>([
    ['nothing', THEN, []],
    ['lines in another order', change(['  part "Stud" 4.00 new\n  part "Stud" 6.00 new\n', '  part "Stud" 6.00 new\n  part "Stud" 4.00 new\n']), []],
    ['a part more, with its tax', change(['  part "Stud" 4.00 new\n', '  part "Stud" 4.00 new\n  part "Bolt" 10.00 new\n']), ['came Bolt: – → 10.00 (10.00)', 'tax Sales tax: 10.20 → 11.20 (1.00)']],
    ['one of two that are alike', change(['  part "Stud" 4.00 new\n', '']), ['went Stud: 4.00 → – (-4.00)', 'tax Sales tax: 10.20 → 9.80 (-0.40)']],
    ['the dearer of them', change(['6.00 new', '9.00 new']), ['moved Stud: 6.00 → 9.00 (3.00)', 'tax Sales tax: 10.20 → 10.50 (0.30)']],
    // 92.01 is 61.34 and 50 %; only what the customer pays is told.
    ['a dearer cost', change(['cost 61.34', 'cost 70.00']), ['moved Gasket: 92.01 → 105.00 (12.99)', 'tax Sales tax: 10.20 → 11.50 (1.30)']],
    ['hours, and the fee on them up to its cap', change(['8 h with', '9 h with'], ['cap 45.00', 'cap 68.00']), ['moved Rear head: 800.00 → 900.00 (100.00)', 'moved Supplies: 45.00 → 68.00 (23.00)']],
    ['one stretch of getting in', change(['refit 3 h', 'refit 4 h']), ['moved Engine out: 300.00 → 400.00 (100.00)']],
    ['a named line under another title', change(['"Rear head"', '"The rear head"']), []],
  ])('%s', (_, now, wanted) => {
    expect(news(now)).toEqual(wanted);
  });

  // A line without a name, or with another, that still says the same is one line; what it is called is told where it differs.
  const PUMP = 'part pump "Coolant pump" 80.00 new\n  core 20.00 due 30 d\n';
  const pumped = change(['option repair', `${PUMP}option repair`], ['  do head\n', '  do head\n  fit pump\n']);
  test.each<[string, string, readonly string[]]>([
    ['another name for the same title', pumped.replace('part pump', 'part water-pump').replace('fit pump', 'fit water-pump'), []],
    ['another name and a new price', pumped.replace('part pump', 'part water-pump').replace('fit pump', 'fit water-pump').replace('80.00', '90.00'), ['moved Coolant pump: 80.00 → 90.00 (10.00)', 'tax Sales tax: 18.20 → 19.20 (1.00)']],
    ['another name and title: its deposit is called after it, too', pumped.replace('part pump "Coolant pump"', 'part c-pump "The coolant pump"').replace('fit pump', 'fit c-pump'), ['renamed The coolant pump, before Coolant pump: 80.00 → 80.00 (0.00)', 'renamed The coolant pump, before Coolant pump: 20.00 → 20.00 (0.00)']],
    ['another title of what has no name', pumped.replace('"Gasket"', '"Head gasket"'), ['renamed Head gasket, before Gasket: 92.01 → 92.01 (0.00)']],
    ['that and a new price', pumped.replace('"Gasket" cost 61.34', '"Gaskets" cost 70.00'), ['moved Gaskets, before Gasket: 92.01 → 105.00 (12.99)', 'tax Sales tax: 18.20 → 19.50 (1.30)']],
    ['written elsewhere under a name', pumped.replace('  part "Gasket" cost 61.34 new\n', '  fit gasket\n').replace('option repair', 'part gasket "Gasket" cost 61.34 new\noption repair'), []],
    ['another thing at another price is no rename', pumped.replace('"Gasket" cost 61.34', '"Timing chain" cost 120.00'), ['came Timing chain: – → 180.00 (180.00)', 'went Gasket: 92.01 → – (-92.01)', 'tax Sales tax: 18.20 → 27.00 (8.80)']],
  ])('%s', (_, now, wanted) => {
    expect(changesOf(made(now + AUTHORISED('repair'), undefined, pumped))).toEqual(wanted);
  });

  test('a customer reads what a line was called before', () => {
    const text = sheetForm(supplementSheetOf(made(pumped.replace('"Gasket"', '"Head gasket"') + AUTHORISED('repair'), undefined, pumped)), 'text').replace(/\s+/g, ' ');
    expect(text).toContain('Head gasket · new (renamed; before: Gasket)');
  });

  test('what was found since is told, without its pictures', () => {
    const now = change(['finding seen', 'finding worn "Guides worn"\n  picture "p/x.png"\nfinding seen']);
    expect(made(now + AUTHORISED('repair'), undefined, THEN).findings.map(({ title, pictures }) => [title, pictures])).toEqual([['Guides worn', []]]);
  });

  test('an amount that was authorised otherwise than the version comes to is told apart', () => {
    const one = made(change(['4.00 new', '5.00 new']) + AUTHORISED('repair', '1400.00'), undefined, THEN);
    expect([one.authorised.amount, one.more, one.total, one.news.kind === 'listed' ? one.news.total : '']).toEqual(['1400.00', '58.31', '1458.31', '1457.21']);
    expect(sheetForm(supplementSheetOf(one), 'text').replace(/\s+/g, ' ')).toContain('The version that this is compared with comes to $1,457.21; $1,400.00 was authorised.');
  });
});

describe('what comes back and when it is ready, then and now', () => {
  // An engine that takes three working days to come, and whose old one is due some days after that. 2026-12-07 is a Monday.
  const CORE = `steelyard 1
shop "Bench"
  currency GBP
  locale en-GB
  rate bench 40.00 usual
  tax vat "VAT" 20% on parts
  core-tax refunded on rebuilt
estimate "E"
  written 2026-12-07
  start 2026-12-07
labour swap "Swap" 8 h
  uses engine
part engine "Exchange engine" 900.00 rebuilt arrives 3 d
  core 400.00 due 9 d
option full "Exchange engine"
  do swap
  warranty 24 mo
  leaves out "Hoses"
`;
  const of = (before: string | undefined, ...edits: readonly (readonly [string, string])[]) => made(edits.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(from);
    return text.replace(from, to);
  }, CORE) + AUTHORISED('full', '1880.00'), undefined, before);
  const text = (supplement: Supplement, form: QuoteForm = 'text') => sheetForm(supplementSheetOf(supplement), form).replace(/\s+/g, ' ');
  const LATE = [['9 d', '1 d'], ['8 h', '20 h']] as const;

  test('a deposit that no longer comes back: 400.00 and its 80.00 of tax are lost, and the total is only 480.00 more', () => {
    const one = of(CORE, ...LATE);
    // 8 h at 40.00, 900.00 and 400.00 with 20 % on both are 1,880.00, and 480.00 of that came back; 20 h make 480.00 more.
    expect([one.total, one.more, one.comesBack, one.news.kind === 'listed' ? one.news.before.comesBack : '']).toEqual(['2360.00', '480.00', '0.00', '480.00']);
    const says = text(one);
    expect(says).toContain('Of that comes back £0.00 (before: £480.00)');
    expect(says).toContain('Of that comes back Before: £480.00 Now: £0.00 Difference: -£480.00');
    expect(says).toContain('Total less what comes back Before: £1,400.00 Now: £2,360.00 Difference: +£960.00');
    expect(says).toContain('so nothing is expected back. £80.00 of tax on it does not come back. Before, £400.00 was to come back, and £80.00 of tax with it, if it went back by 19 December 2026.');
  });

  test('and the other way round', () => {
    const before = LATE.reduce((all, [from, to]) => all.replace(from, to), CORE);
    expect(text(of(before))).toContain('Of that comes back £480.00 (before: £0.00)');
    expect(text(of(before))).toContain('Before, nothing was expected back.');
  });

  test('where no line comes to another amount, what comes back is told all the same', () => {
    const says = text(of(CORE, ['due 9 d', 'due 9 d less 50.00']));
    expect(says).toContain('Nothing in it comes to another amount than in the version before.');
    expect(says).toContain('Of that comes back Before: £480.00 Now: £420.00 Difference: -£60.00');
    expect(says).toContain('All of it, with what stays as it was Before: £1,880.00 Now: £1,880.00 Difference: £0.00');
  });

  test('a deposit under another name is the same one', () => {
    expect(of(CORE, ['uses engine', 'uses unit'], ['part engine "Exchange engine"', 'part unit "Engine, exchanged"']).deposits).toEqual([]);
    expect(of(CORE, ['uses engine', 'uses unit'], ['part engine "Exchange engine"', 'part unit "Engine, exchanged"'], ['400.00 due', '390.00 due']).deposits).toMatchObject([{ deposit: { charge: '390.00' } }]);
  });

  test('one that is new has nothing before it', () => {
    const one = of(CORE.replace('  core 400.00 due 9 d\n', ''));
    expect(one.deposits).toMatchObject([{ deposit: { charge: '400.00' }, before: undefined }]);
    expect(text(one)).toContain('Of that comes back £480.00 (before: £0.00)');
    expect(text(one)).not.toContain('was to come back');
  });

  test('the day', () => {
    // The engine comes on Thursday, and 8 h are that day’s; with 5 d it comes on the Monday after.
    const says = text(of(CORE, ['arrives 3 d', 'arrives 5 d']));
    expect(says).toMatch(/Ready Monday, 14 December 2026 \(before: Thursday, 10 December 2026\)/);
    expect(says).toContain('not a promise. Before, it was Thursday, 10 December 2026.');
    expect(text(of(CORE))).toContain('Ready Thursday, 10 December 2026, as before');
    expect(text(of(CORE))).toContain('The day is as it was before.');
  });

  test('the warranty and what is left out are told where they are not as they were', () => {
    expect(text(of(CORE))).not.toContain('Warranty');
    expect(text(of(CORE, ['24 mo', '12 mo']))).toContain('Warranty 12 months (before: 24 months)');
    expect(text(of(CORE, ['  warranty 24 mo\n', '']))).toContain('Warranty none stated (before: 24 months)');
    const said = text(of(CORE, ['leaves out "Hoses"', 'leaves out "Hoses", "Radiator"']));
    expect(said).toContain('NOT INCLUDED, SAID SINCE THEN - Radiator');
    expect(text(of(CORE))).not.toContain('Hoses');
  });

  test('where the version is not at hand: what is so now', () => {
    const says = text(of(undefined));
    expect(says).toContain('Of that comes back £480.00 Ready Thursday, 10 December 2026 ─');
    expect(says).toContain('Exchange engine: £400.00 is paid now. £400.00 comes back, and £80.00 of tax with it');
    expect(says).not.toMatch(/before: |as before/);
  });

  test.each(forms)('as %s', (form) => {
    const says = text(of(CORE, ...LATE), form).replace(/<[^>]*>|\*|\|/g, ' ').replace(/\s+/g, ' ');
    expect(says).toMatch(/Of that comes back:? £0.00 \( ?before: £480.00 ?\)/);
    expect(says).toMatch(/Before, £400.00 was to come back, and £80.00 of tax with it/);
    expect(says).toMatch(/Before, it was/);
  });
});

describe('without the version that was authorised', () => {
  test.each([
    ['none at hand', undefined, 'the version that was authorised was not at hand when this was written'],
    ['without the option', THEN.replace('option repair', 'option mend'), 'the version that was authorised does not have this work by that name'],
    ['a line of it can’t be read', THEN.replace('4.00 new', '1,004.00 new'), 'the version that was authorised has a line that can’t be read'],
    ['another currency', THEN.replace('USD', 'CAD'), 'the version that was authorised is in another currency'],
  ])('%s: the amounts, no list, and why', (_, before, why) => {
    const text = sheetForm(supplementSheetOf(made(THEN + AUTHORISED('repair', '1400.00'), undefined, before)), 'text').replace(/\s+/g, ' ');
    expect(text).toContain(`What is new is not listed line by line: ${why}. The new total and what was authorised differ by +$57.21.`);
    expect(text).toContain('Authorised so far $1,400.00 Difference +$57.21 New total $1,457.21');
  });
});

test('nothing is added to what was not authorised, or to an option that isn’t there or can’t be priced', () => {
  const kind = (text: string, name?: string) => supplementOf(decide(read(text).comparison), name, undefined).kind;
  expect(kind(THEN)).toBe('not-authorised');
  expect(kind(THEN, 'repair')).toBe('not-authorised');
  expect(kind(THEN + AUTHORISED('repair'), 'gone')).toBe('no-option');
  expect(kind(THEN.replace('4.00 new', '1,004.00 new') + AUTHORISED('repair'))).toBe('incomplete');
});

test('it draws no conclusion of law, names the types of rule, and leaves room to authorise', () => {
  const text = sheetForm(supplementSheetOf(made(THEN + AUTHORISED('repair'), undefined, THEN)), 'text');
  expect(text.replace(/\s+/g, ' ')).toContain('check your local rule on written estimates and authorisation.');
  expect(text).not.toMatch(/\b(?:legal|lawful|law|must|required|liable|binding|statut)/i);
  for (const blank of ['Name', 'Amount up to', 'Date and time', '[ ] signature   [ ] telephone, number called:', 'Signature', 'For the shop']) expect(text).toContain(blank);
});

// What is on no customer's paper ------------------------------------------------------------------------------------

/** The same job later: by fixed rules a third of its loose lines are gone, every other figure of hours is another, and so is a rate. */
function later(text: string): string {
  let line = 0;
  let figure = 0;
  const next = (digit: string) => String((Number(digit) % 9) + 1);
  return text.split('\n')
    .filter((one) => !/^ {2}(?:part|sublet|fee|harvest) "/.test(one) || line++ % 3 !== 0)
    .join('\n')
    .replace(/(\d)(?:\.\d+)? h\b/g, (whole, digit: string) => (figure++ % 2 === 0 ? whole : `${next(digit)} h`))
    .replace(/^( {2}rate bench-1 (?:"[^"]*" )?)(\d)/m, (_, head: string, digit: string) => `${head}${next(digit)}`);
}

/** Random estimates, and each once more as it may be later. */
const pairs = fc.sample(randomEstimate, { seed: 31, numRuns: 110 }).map((before) => ({ before, now: later(before) })).filter(({ now }) => read(now).errors.length === 0);

function keysOf(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(keysOf);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, below]) => [key, ...keysOf(below)]);
}

describe('on random estimates', () => {
  const all = pairs.flatMap(({ before, now }) => {
    const options = read(now).comparison.options.filter(({ complete, option }) => complete && option.written).map(({ option }) => option.name);
    return options.flatMap((name) => {
      const then = read(before).comparison.options.find(({ option }) => option.name === name);
      return then?.complete === true ? [{ name, before, now, then, supplement: made(now + AUTHORISED(name), name, before) }] : [];
    });
  });

  test('what is new adds up to the difference of the totals, to the smallest coin', PATIENT, () => {
    let lines = 0;
    for (const { supplement: { news, total, more, authorised, currency }, then } of all) {
      if (news.kind !== 'listed') throw new Error(news.why);
      expect(news.total).toBe(then.totals.total.likely.toFixed(currency.digits));
      const sum = [...news.lines, ...news.taxes].reduce((added, one) => added.plus(one.more), new Decimal(0));
      expect(sum.toFixed(currency.digits)).toBe(new Decimal(total).minus(news.total).toFixed(currency.digits));
      expect(new Decimal(authorised.amount).plus(more).toFixed()).toBe(new Decimal(total).toFixed());
      for (const one of news.lines) expect(new Decimal(one.now ?? 0).minus(one.before ?? 0).toFixed(currency.digits)).toBe(one.more);
      lines += news.lines.length;
    }
    expect(all.length).toBeGreaterThan(50);
    expect(lines).toBeGreaterThan(80);
  });

  test('the other way round it is the mirror', PATIENT, () => {
    const turned = { came: 'went', went: 'came', moved: 'moved', renamed: 'renamed' } as const;
    for (const { name, before, now, supplement } of all.slice(0, 40)) {
      const back = made(before + AUTHORISED(name), name, now);
      if (back.news.kind !== 'listed' || supplement.news.kind !== 'listed') throw new Error('not listed');
      const facts = (list: typeof back.news.lines, turn: (kind: keyof typeof turned) => string, sign: 1 | -1) => list.map(({ kind, more }) => `${turn(kind)} ${new Decimal(more).times(sign).toFixed()}`).sort();
      expect(facts(back.news.lines, (kind) => turned[kind], -1)).toEqual(facts(supplement.news.lines, (kind) => kind, 1));
    }
  });

  test('what an hour costs the shop changes not a byte, and the model has no place for what the shop pays or keeps', PATIENT, () => {
    let changed = 0;
    for (const { name, before, now, supplement } of all.slice(0, 40)) {
      expect(keysOf(supplement).filter((key) => /cost|markup|margin|slack|technician|derivation|profit|spread|sold|step|from|record/i.test(key))).toEqual([]);
      const other = (text: string) => text.replace(/^( {2}rate .* cost )\d[\d.]*(?: \/ \d[\d.]* \/ \d[\d.]*)?/gm, '$177.77');
      if (other(now) === now) continue;
      changed++;
      expect(made(other(now) + AUTHORISED(name), name, other(before))).toEqual(supplement);
    }
    expect(changed).toBeGreaterThan(5);
  });

  test('a cost and a markup show only as the price that they make', () => {
    const one = made(`${THEN.replace('cost 61.34', 'cost 77.77')}${AUTHORISED('repair')}`, undefined, THEN);
    for (const form of forms) expect(sheetForm(supplementSheetOf(one), form)).not.toMatch(/61\.34|77\.77|41\.37|50 ?%/);
  });
});

describe('hostile texts stay texts', () => {
  const TAIL = 'and so on, at some length';
  /** So unlike the estimate itself that no line is taken for one of it. */
  const unlike = (text: string) => [['part unit', 'part other'], ['fit unit', 'fit other'], ['400.00 rebuilt', '450.00 new'], ['core 50.00 due 30 d', 'core 60.00 due 40 d'], [' 5.00\nestimate', ' 6.00\nestimate'], ['20.00', '25.00']]
    .reduce((all, [from, to]) => all.replace(from as string, to as string), estimateOf(text));
  /** What a version says now and said before, for each thing that can become of a line. */
  const versions: Readonly<Record<string, (text: string) => readonly [now: string, before: string]>> = {
    'what came': (text) => [estimateOf(text), unlike('what stood there')],
    'what went': (text) => [estimateOf('what stands there'), unlike(text)],
    'what is called otherwise': (text) => [estimateOf(`${text} ${TAIL}`), estimateOf(`was ${text} ${TAIL}`).replace('part unit', 'part other').replace('fit unit', 'fit other')],
  };
  const supplement = (what: string, text: string) => {
    const [now, before] = (versions[what] as (typeof versions)[string])(text);
    const { comparison, records } = versionOf(`${now}authorised 1.00 for one on 2026-11-25 by "${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"\n`);
    const found = supplementOf(decide(comparison), 'one', { before: versionOf(before), records });
    if (found.kind !== 'supplement') throw new Error(found.kind);
    return found.supplement;
  };
  const tags = (page: string) => page.replace(/<style>[^]*?<\/style>/, '').match(/<[^>]*>/g)?.map((tag) => tag.replace(/"[^"]*"/g, '""'));

  test.each([['what came', 'came'], ['what went', 'went'], ['what is called otherwise', 'renamed']])('%s is there to be looked at', (what, kind) => {
    const { news } = supplement(what, 'plain words');
    expect(news.kind === 'listed' && new Set(news.lines.map((one) => one.kind)).has(kind as 'came')).toBe(true);
  });

  describe.each(Object.keys(versions))('%s', (what) => {
    const shape = tags(sheetForm(supplementSheetOf(supplement(what, 'plain words')), 'html'));
    test.each(HOSTILE.map((text) => [JSON.stringify(text.slice(0, 40)), text] as const))('%s', (_, text) => {
      const sheet = supplementSheetOf(supplement(what, text));
      expect(tags(sheetForm(sheet, 'html'))).toEqual(shape);
      const out = sheetForm(sheet, 'text');
      expect(out.split('\n').filter((line) => widthOf(line) > TEXT_WIDTH)).toEqual([]);
      expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2066-\u2069\ufeff]/);
    });
  });
});
