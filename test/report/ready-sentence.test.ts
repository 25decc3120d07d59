import { expect, test } from 'vitest';
import { decisionVerdict } from '../../src/report/index.js';
import { decideText } from '../weigh/decision/weighing.js';

// By hand: days of eight hours from Monday 30 November on.

const said = (options: string) => decisionVerdict(decideText(`steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 10.00\nestimate "E"\n  start 2026-11-30\nlabour look "Look" 1 h\nstage first "Take it down"\n  do look\nvehicle "Van"\n  worth 9000.00\n  unrepaired 2000.00\n${options}`)).match(/\w+ is ready.*?\d(?:[;,][^.]*)?\./)?.[0];
const option = (name: string, hours: number) => `option ${name} "Repair ${name}"\n  labour "Work ${name}" ${hours} h\n`;

test('days are compared with those of other repairs, not with selling it as it stands', () => {
  // Selling it takes the hour of the stage.
  expect(said(option('a', 10) + option('b', 20))).toBe('It is ready on 2026-12-01, 1 working day before any other repair.');
  expect(said(`${option('a', 20)}${option('b', 10)}  part "P" 500.00 new\n`)).toBe('It is ready on 2026-12-02; Repair b is 1 working day sooner.');
});

test('where only one option repairs, nothing is compared', () => {
  expect(said(option('a', 10))).toBeUndefined();
});
