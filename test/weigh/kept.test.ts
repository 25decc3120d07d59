import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { namedFigures } from '../../src/report/index.js';
import { createLanguageService, type LanguageService } from '../../src/service/index.js';
import { randomEstimate } from '../support/random-estimate.js';
import { PATIENT, runs } from '../support/random-runs.js';

const URI = '/w/one.yard';

/** All that is said of a file: its figures, ways in, dates and problems. */
function shown(service: LanguageService): unknown {
  const { comparison } = service.weighing(URI);
  return {
    figures: [...namedFigures(comparison)].map(([id, { low, likely, high }]) => `${id} ${low.toFixed()} ${likely.toFixed()} ${high.toFixed()}`),
    options: comparison.options.map(({ option, planned, complete, ready, open }) => [option.name, complete, ready.date, planned.chosen.paid.map((way) => way.name), planned.others.map((plan) => plan.money.toFixed()), open.map((one) => `${one.job.title} ${one.now.likely.toFixed()}`)]),
    ranking: comparison.ranking.map(({ option }) => option.name),
    problems: service.diagnostics(URI).map((one) => `${one.range.start} ${one.range.end} ${one.code} ${one.text}`),
  };
}

/** A slip of a writer: one number changed, or one line taken out, or one doubled. */
function edited(text: string, at: number, how: number): string {
  if (how === 0) {
    const numbers = [...text.matchAll(/(?<![\w-])\d+(?![\w-])/g)];
    const found = numbers[at % numbers.length];
    return found === undefined ? text : `${text.slice(0, found.index)}${Number(found[0]) + 1}${text.slice(found.index + found[0].length)}`;
  }
  const lines = text.split('\n');
  const line = at % lines.length;
  lines.splice(line, how === 1 ? 1 : 0, ...(how === 1 ? [] : [lines[line] as string]));
  return lines.join('\n');
}

describe('what is kept between edits', () => {
  it('changes nothing: after any row of edits all is as if the file were read afresh', PATIENT, () => {
    const edits = fc.array(fc.tuple(fc.nat({ max: 10_000 }), fc.nat({ max: 2 })), { minLength: 1, maxLength: 3 });
    fc.assert(fc.property(randomEstimate, edits, (start, row) => {
      let text = start;
      const serviceOf = () => createLanguageService({ read: (uri) => (uri === URI ? { text } : 'missing'), resolvePath: () => undefined });
      const kept = serviceOf();
      kept.weighing(URI);
      for (const edit of [...row, undefined]) {
        text = edit === undefined ? start : edited(text, ...edit);
        expect(shown(kept)).toEqual(shown(serviceOf()));
      }
    }), runs(4217, 15));
  });
});
