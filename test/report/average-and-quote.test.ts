import { expect, test } from 'vitest';
import { decisionVerdict, inspectionSentence } from '../../src/report/index.js';
import { decideText } from '../weigh/decision/weighing.js';

// Averages by hand, from chances of certainty or nine in ten; the shares of drawn cases follow from them.

const decided = (text: string) => decideText(`steelyard 1\nshop "S"\n  currency USD\n${text}`);
const said = (text: string) => decisionVerdict(decided(text));
const option = (name: string, price: number, chance = '') => `option ${name} "Way ${name}"\n  part "P${name}" ${price}.00 new\n${chance}`;
const turnsUp = (name: string, percent: number) => `  chance ${name} "It is ${name}" ${percent}%\n    part "Casting" 400.00 new\n`;

test('where the average clearly speaks for another option, both are named with the difference; that is no close call', () => {
  // 500.00 and for certain 400.00 more, against 700.00.
  const text = said(option('a', 500, turnsUp('cracked', 100)) + option('b', 700));
  expect(text).toContain('The quote favours Way a, the average favours Way b by 200: Way b is the cheapest in 100 % of 1000 cases drawn from the ranges and chances. Way a: with what may turn up it costs 900 on average, Way b 700.');
  expect(text).not.toContain('too close');
});

test('the option that costs least on average is the one compared, also where another one is the next by its quote', () => {
  // 500 + 0.9 × 400 = 860 and 600 + 360 = 960 against 700; both are dearer than that in 0.9 × 0.9 of the cases.
  const text = said(option('a', 500, turnsUp('cracked', 90)) + option('b', 600, turnsUp('worn', 90)) + option('c', 700));
  expect(text).toMatch(/The quote favours Way a, the average favours Way c by 160: Way c is the cheapest in 8\d % of 1000 cases/);
  expect(text).toContain('Way a: with what may turn up it costs 860 on average, Way c 700.');
});

test('options quoted alike are not told apart by their quote', () => {
  expect(said(option('a', 500, turnsUp('cracked', 100)) + option('b', 500))).toContain('The quoted figures are the same, the average favours Way b by 400: ');
});

test('where neither is the cheapest in two cases of three it stays a close call', () => {
  // 500 + 0.6 × 400 = 740 against 720, and a is the cheapest in the four cases of ten without it.
  expect(said(option('a', 500, turnsUp('cracked', 60)) + option('b', 720))).toMatch(/The choice is too close to call: on average Way b costs less, and Way a is the cheapest in only 4\d % of the cases\./);
});

test('an inspection that changes nothing names the option that stays, which need not be the cheapest by its quote', () => {
  // Where it shows nothing the head is cracked in 0.9 × 0.5 / (0.9 × 0.5 + 0.1 × 0.95) = 83 % of cases, which makes 830 against 700;
  // where it finds nine cracks of ten, in 0.9 × 0.1 / (0.9 × 0.1 + 0.1 × 0.95) = 49 %, which makes 695.
  const look = (finds: number) => decided(`${option('a', 500, turnsUp('cracked', 90))}${option('b', 700)}inspect dye "Dye test" 50.00\n  finds cracked ${finds}% wrongly 5%\n`);
  const [poor, good] = [look(50), look(90)].map(({ inspections: [one], comparison }) => (one === undefined ? '' : inspectionSentence(one, comparison)));
  expect(poor).toBe('No reason to wait: “Dye test” costs 50.00, and whatever it shows, “Way b” stays the cheapest on average.');
  expect(good).toContain('Not worth its price: “Dye test” costs 50.00');
});
