import { describe, expect, test } from 'vitest';
import { AS_IT_STANDS, monthsIn, type Chance, type Estimate } from '../../src/estimate/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';

const SHOP = 'steelyard 1\nshop "Bench"\n  technicians 2\n  rate bench 100.00 cost 41.00 usual\n  rate wiring 120.00\n';
const uri = uriOf('e.yard');

function read(text: string): { readonly estimate: Estimate; readonly said: readonly string[] } {
  const { service } = serviceOver({ 'e.yard': SHOP + text });
  return { estimate: service.weighing(uri).resolved.estimate, said: service.diagnostics(uri).map(({ code }) => code) };
}

const names = (list: readonly { readonly name: string | undefined }[]) => list.map(({ name }) => name);

describe('chances', () => {
  const { estimate, said } = read(`part casting "Bare head" 690.00 used
part seal "Seal" 4.00 new
sublet face "Face" 40.00
fee scrap "Scrap" 15.00
labour wash "Wash" 1 h
  uses seal
labour fit-it "Fit it" 2 h
  needs wash
  uses seal
  uses face
labour strip "Strip" 4 h
  chance cracked "It is cracked" 12% do fit-it fit casting, seal charge scrap
    send face
    chance guides "Guides are worn" 40% comeback
      labour "Bore them" 1.5 h
      part "Guides" 24 at 4.00 new
option repair "Repair"
  do strip
  chance "It leaks" 3%
    fee "Towing" 80.00
`);
  const [strip] = estimate.labour.filter(({ name }) => name === 'strip');
  const [cracked] = (strip === undefined ? undefined : estimate.chances.get(strip.record)) ?? [];

  test('hold all that they then take, each thing once, with what jobs need and use', () => {
    expect(said).toEqual([]);
    expect(names(cracked?.labour ?? [])).toEqual(['fit-it', 'wash']);
    expect([names(cracked?.parts ?? []), names(cracked?.sublets ?? []), names(cracked?.fees ?? [])]).toEqual([['seal', 'casting'], ['face'], ['scrap']]);
  });

  test('stand below each other, and say when they happen', () => {
    const [guides] = cracked?.chances ?? [];
    const says = (chance: Chance | undefined) => [chance?.name, chance?.percent?.likely.toFixed(), chance?.when];
    expect([says(cracked), says(guides)]).toEqual([['cracked', '12', 'open'], ['guides', '40', 'comeback']]);
    expect(guides?.labour.map(({ title }) => title)).toEqual(['Bore them']);
  });

  test('bring nothing into the option itself', () => {
    const [repair] = estimate.options;
    expect([names(repair?.labour ?? []), repair?.parts, repair?.sublets, repair?.fees]).toEqual([['strip'], [], [], []]);
    expect(repair?.chances.map(({ title }) => title)).toEqual(['It leaks']);
  });

  test('one fault gives one message', () => {
    expect(read('option r "R"\n  labour "L" 1 h\n  chance "C" 120%\n    part "P" 1.00 new\n').said).toEqual(['over-hundred']);
    expect(read('option r "R"\n  labour "L" 1 h\n  chance "C" 12%\n    do nothing-known\n').said).toEqual(['unknown-name']);
    expect(read('option r "R"\n  labour "L" 1 h\n  chance "C" 12%\n    part 1.00 new\n').said).toEqual(['title-missing']);
    expect(read('option r "R"\n  labour "L" 1 h\n  chance "C"\n').said).toEqual(['percent-missing']);
  });
});

describe('inspections', () => {
  const CHANCES = 'labour strip "Strip" 4 h\n  chance cracked "C" 12%\n    part "P" 690.00 used\n    chance guides "G" 40%\n      part "P" 90.00 new\noption repair "R"\n  do strip\n';

  test('name chances wherever they stand, and are the very ones of the work', () => {
    const { estimate, said } = read(`${CHANCES}inspect dye "Dye" 95.00 0.6 h class wiring\n  finds cracked 90% wrongly 5%\n  finds guides 60%\n`);
    const [dye] = estimate.inspections;
    const [cracked] = [...estimate.chances.values()][0] ?? [];
    expect(said).toEqual([]);
    expect(dye?.finds.map(({ chance }) => chance)).toEqual([cracked, cracked?.chances[0]]);
    expect(dye?.finds[0]?.chance).toBe(cracked);
    expect(dye?.finds.map(({ shows, wrongly }) => [shows.likely.toFixed(), wrongly?.likely.toFixed()])).toEqual([['90', '5'], ['60', undefined]]);
    expect([dye?.price?.likely.toFixed(), dye?.hours?.likely.toFixed(), dye?.rate?.name]).toEqual(['95', '0.6', 'wiring']);
  });

  test('without a class take the usual rate', () => {
    expect(read(`${CHANCES}inspect dye "Dye" 1 h\n  finds cracked 90%\n`).estimate.inspections[0]?.rate?.name).toBe('bench');
  });

  test('keep what can be read', () => {
    const { estimate, said } = read(`${CHANCES}inspect dye "Dye" 1 h\n  finds cracked 90%\n  finds cracked 80%\n  finds guides 101%\n  finds nobody 50%\n`);
    expect([...said].sort()).toEqual(['only-once', 'over-hundred', 'unknown-name']);
    expect(names(estimate.inspections[0]?.finds.map(({ chance }) => chance) ?? [])).toEqual(['cracked']);
  });
});

describe('coverages, dates and people', () => {
  test('a coverage holds what it says of itself', () => {
    const { estimate, said } = read('vehicle "V"\n  built 2012-11\n  model year 2013\n  downtime 38.00\noption repair "R"\n  labour "L" 1 h\ncoverage guides "G" extended-warranty\n  built from 2012-06\n  built to 2013-02-28\n  years 2012, 2013\n  years 2014\n  up to 150000 mi\n  within 120 mo\n  until 2027-12-31\n  covers repair\n');
    expect(said).toEqual(['estimate-line-missing']);
    const [guides] = estimate.coverages;
    expect(guides).toMatchObject({ name: 'guides', sort: 'extended-warranty', builtFrom: '2012-06', builtTo: '2013-02-28', years: [2012, 2013, 2014], until: '2027-12-31', covers: ['repair'] });
    expect([guides?.upTo?.unit?.word, guides?.within?.unit?.word]).toEqual(['mi', 'mo']);
    expect([estimate.vehicle?.modelYear, estimate.vehicle?.downtime?.likely.toFixed()]).toEqual([2013, '38']);
  });

  test.each([
    ['2012-06', '2012-05', ['coverage-backwards']],
    ['2012-06', '2012-06', []],
    ['2012-06', '2012-06-01', []],
    ['2012-06-15', '2012-06', []],
    ['2012-06-15', '2012-06-14', ['coverage-backwards']],
  ])('built from %s to %s', (from, to, said) => {
    expect(read(`coverage "G" recall built from ${from} built to ${to}\n`).said).toEqual(said);
  });

  test('the estimate’s technicians, answer and interest; the shop’s cost of an hour', () => {
    const { estimate } = read('estimate "E" answer 2 d technicians 3 interest 6%\n');
    expect([estimate.header?.technicians, estimate.header?.answer?.likely.toFixed(), estimate.header?.interest?.likely.toFixed()]).toEqual([3, '2', '6']);
    expect([estimate.shop.technicians, estimate.shop.rates.get('bench')?.cost?.likely.toFixed(), estimate.shop.rates.get('wiring')?.cost]).toEqual([2, '41', undefined]);
  });

  test('months: a calendar month is one, 365.2425 days are twelve', () => {
    const { estimate } = read('option a "A"\n  lasts 36 mo\noption b "B"\n  lasts 52 wk\noption c "C"\n  lasts 365.2425 d\n');
    // The mean year of the Gregorian calendar has 97 leap days in 400 years: 365 + 97/400 (computed).
    expect(estimate.options.map(({ lasts }) => (lasts === undefined ? undefined : monthsIn(lasts).toFixed(6)))).toEqual(['36.000000', '11.959178', '12.000000']);
    expect(365 + 97 / 400).toBe(365.2425);
  });
});

describe('selling the vehicle as it stands', () => {
  const options = 'labour look "Look" 1 h\n  done first\nlabour ask "Ask" 2 h\n  done first\nfee tow "Tow" 80.00\nfee oil "Oil" 9.00\noption a "A" do look, ask charge tow, oil\noption b "B" do look charge tow\n';
  const sold = (text: string) => read(text).estimate.options.find(({ written }) => !written);

  test('owes what every option does first and charges', () => {
    const option = sold(`vehicle "V" unrepaired 900.00 worth 5000.00\n${options}`);
    expect([option?.name, names(option?.labour ?? []), names(option?.fees ?? []), option?.worth?.likely.toFixed()]).toEqual([AS_IT_STANDS, ['look'], ['tow'], '900']);
  });

  test('is not there without its value, without other options, or where one is written', () => {
    expect(sold(`vehicle "V"\n${options}`)).toBeUndefined();
    expect(sold('vehicle "V" unrepaired 900.00 worth 5000.00\n')).toBeUndefined();
    const written = read(`vehicle "V" unrepaired 900.00 worth 5000.00\n${options}option as-it-stands "Sell" worth 700.00\n`);
    expect([written.estimate.options.every((one) => one.written), written.said]).toEqual([true, ['estimate-line-missing', 'unrepaired-name']]);
  });

  test('is the same object until something that it is made of changes', () => {
    const { service, host } = serviceOver({ 'e.yard': `${SHOP}vehicle "V" unrepaired 900.00 worth 5000.00\n${options}` });
    const option = () => service.weighing(uri).resolved.estimate.options.find(({ written }) => !written);
    const before = option();
    host.set('e.yard', `${SHOP}vehicle "V" unrepaired 900.00 worth 5000.00\n${options}note "Later"\n`);
    expect(option()).toBe(before);
    host.set('e.yard', `${SHOP}vehicle "V" unrepaired 900.00 worth 5000.00\n${options.replace('80.00', '90.00')}`);
    expect(option()).not.toBe(before);
  });
});
