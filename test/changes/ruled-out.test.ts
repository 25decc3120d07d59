import { Ajv2020 } from 'ajv/dist/2020.js';
import * as z from 'zod';
import { expect, test } from 'vitest';
import { changesJson, changesReport, changesText } from '../../src/report/changes/index.js';
import { changed } from './both.js';

// 100.00 an hour; sums by hand.
const text = (rules: string) => `steelyard 1\nshop "Bay"\n  rate bench 100.00\nfinding scored "Bores scored"\n${rules}option mend "Mend"\n  labour "Head" 11 h\noption used "Used engine"\n  labour "Swap" 10 h\n`;
const AGAINST = '  rules out used\n';
const said = (before: string, after: string) => changesText(changed(text(before), text(after))).replace(/\s+/g, ' ');

test('an option that a finding rules out by now is told, since the choice goes by it', () => {
  expect(said('', AGAINST)).toContain('Mend now costs least; before, it was Used engine, by 100.00. Used engine is now ruled out: the finding “Bores scored” speaks against it.');
  expect(said(AGAINST, '')).toContain('Used engine now costs least, 100.00 less than Mend; before, it was Mend. Used engine is no longer ruled out.');
  expect(said(AGAINST, `${AGAINST}  noise "knocks"\n`)).toContain('Mend still costs least. Used engine is still ruled out: the finding “Bores scored” speaks against it.');
  expect(said('', '  noise "knocks"\n')).not.toContain('ruled out');
});

test('and in the data', () => {
  const report = changesJson(changed(text(''), text(AGAINST)), { before: () => undefined, after: () => undefined });
  const valid = new Ajv2020({ strict: false }).compile(z.toJSONSchema(changesReport(), { target: 'draft-2020-12' }));
  expect(valid(report), JSON.stringify(valid.errors)).toBe(true);
  expect(report.options.map(({ before, after }) => [before?.ruledOut, after?.ruledOut])).toEqual([[[], []], [[], ['Bores scored']]]);
});
