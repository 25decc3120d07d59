import { describe, expect, test } from 'vitest';
import { explain } from '../../src/report/index.js';
import { authorisedIn } from '../../src/weigh/index.js';
import { read } from './weighed.js';

const HEAD = 'steelyard 1\nshop "Invented Bay"\n  currency USD\n  rate bench 100.00\n';
const STAGE = 'labour scope "Borescope" 2 h\nstage look "Look inside"\n  do scope\n';
const OPTIONS = 'option repair "Repair"\n  fee "All of it" 800.00\noption used "Used engine"\n  fee "All of it" 900.00\n';

const since = (below: string, options = OPTIONS) => authorisedIn(read(`${HEAD}${STAGE}${options}${below}`).comparison).map((one) => `${one.of.name}: ${one.since?.name ?? 'is done'}`);

describe('the option that is done', () => {
  const both = 'authorised 900.00 for used on 2026-11-24\nauthorised 800.00 for repair on 2026-11-25\n';

  test('is the one authorised last, whatever was authorised after it for a stage or for what is not there', () => {
    expect(since(`${both}authorised 150.00 for look on 2026-11-28\n`)).toEqual(['look: is done', 'repair: is done', 'used: repair']);
    expect(since(`${both}authorised 950.00 for rebuild on 2026-11-28\n`)).toEqual(['repair: is done', 'used: repair']);
  });

  test('is none yet where only a stage is authorised', () => {
    expect(since('authorised 150.00 for look on 2026-11-28\n')).toEqual(['look: is done']);
    expect(since('authorised 150.00 for look on 2026-11-28\n', '')).toEqual(['look: is done']);
  });
});

// Shapes of rules, not advice on law: the shop's own rule governs. Sums by hand.
test.each([
  ['10%', ['Room over what was authorised: 70.00', 'Authorised: 700.00', 'Overrun: 10 %']],
  ['10% at least 80.00', ['Room over what was authorised: 80.00', 'Percentage of what was authorised: 70.00', 'At least: 80.00']],
  ['10% at most 50.00', ['Room over what was authorised: 50.00', 'Percentage of what was authorised: 70.00', 'At most: 50.00']],
  ['10% at least 80.00 at most 90.00', ['Room over what was authorised: 80.00', 'Raised to the least: 80.00', 'At most: 90.00']],
])('the room that a rule leaves says how it was made: %s', (rule, wanted) => {
  const { comparison } = read(`${HEAD}  overrun ${rule}\n${OPTIONS}authorised 700.00 for repair on 2026-11-25\n`);
  const rows = authorisedIn(comparison).flatMap(({ room }) => explain(room, comparison.money, () => undefined));
  expect(rows.filter(({ depth }) => depth < 2).map(({ text }) => text)).toEqual(wanted);
});
