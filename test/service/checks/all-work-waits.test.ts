import { expect, test, describe } from 'vitest';
import { comparisonText } from '../../../src/report/index.js';
import { serviceOver, uriOf } from '../../support/fixture.js';

// Common practice: parts and outside work hold up the work that fits them; the rest of the job goes on meanwhile. Where nobody wrote down
// which work that is, the plan keeps to the safe side and lets all of it wait.

const THIS = 'this.yard';
const HEAD = 'steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00\n  tax sales 7% on parts\nestimate "E"\n  start 2026-11-30\n  valid 14 d\nfinding seen "Seen"\nlabour seal "Front seal" 2 h\n  because seen\nlabour filter "Fuel filter" 3 h\n';
const PUMP = 'part pump "Injection pump" 300.00 new arrives 6 d\n';
const BENCH = 'sublet bench "Pump: test bench" 90.00 back in 4 d\n';
const option = (...facts: readonly string[]) => `option one "Mend it"\n  warranty 12 mo\n${facts.map((fact) => `  ${fact}\n`).join('')}`;

function read(text: string) {
  const { service } = serviceOver({ [THIS]: HEAD + text });
  const told = service.diagnostics(uriOf(THIS)).filter(({ code }) => code === 'all-work-waits');
  const { comparison } = service.weighing(uriOf(THIS));
  const [{ ready } = { ready: undefined }] = comparison.options;
  return {
    service, comparison, ready,
    told: told.map(({ range, message, related }) => `${(HEAD + text).slice(range.start, range.end)}: ${message.what}${related === undefined ? '' : ' +'}`),
    held: ready?.tasks.flatMap(({ task }) => (task.holdsAll ? [task.title] : [])),
  };
}

describe('a part or outside work that no work uses', () => {
  test('holds up all of it, and that is told where the option says it', () => {
    const { told, held, ready } = read(`${PUMP}${BENCH}${option('do seal, filter', 'fit pump', 'send bench')}`);
    expect(held).toEqual(['Injection pump arrives', 'Pump: test bench: away']);
    expect(told).toEqual([
      'pump: No work of option one uses “Injection pump”, so all further work waits until it is there. +',
      'bench: No work of option one uses “Pump: test bench”, so all further work waits until it is back. +',
    ]);
    expect(ready?.date).toBe('2026-12-08'); // six days for the pump from Monday the 30th on; then five hours
  });

  test('does so as well where it stands below the option', () => {
    const { told, held } = read(option('do seal, filter', 'part "Injection pump" 300.00 new arrives 6 d'));
    expect(held).toEqual(['Injection pump arrives']);
    expect(told).toEqual(['part "Injection pump" 300.00 new arrives 6 d: No work of option one uses “Injection pump”, so all further work waits until it is there.']);
  });

  test('holds up only its own work once that names it', () => {
    const { told, held, ready } = read(`${PUMP}labour fit-pump "Pump: replace" 1 h\n  uses pump\n${option('do seal, filter, fit-pump', 'fit pump')}`);
    expect(held).toEqual([]);
    expect(told).toEqual([]);
    expect(ready?.tasks.find(({ task }) => task.title === 'Front seal')?.from).toBe('2026-11-30');
  });

  test.each([
    ['there is one job, which it can only be for', `${PUMP}${option('do seal', 'fit pump')}`],
    ['it is there at once', `part pump "Injection pump" 300.00 new\n${option('do seal, filter', 'fit pump')}`],
    ['it is the engine that goes in', `part motor "Used engine, 70 000 mi" 900.00 used arrives 6 d\n${option('do seal, filter', 'fit motor')}`],
    ['outside work follows what is done last', `labour try "Road test" 1 h done last\nsublet align "Alignment" 80.00 back in 1 d after try\n${option('do seal, filter, try', 'send align')}`],
    ['what else is done comes before the outside work', `sublet align "Tank: clean" 80.00 back in 1 d after seal\n${option('do seal, filter', 'send align')}`],
  ])('is not told of where %s', (_, text) => {
    const { told, held } = read(text);
    expect(held).toEqual([]);
    expect(told).toEqual([]);
  });

  test('is told where the plan says what waits for what: in the text and at its line', () => {
    const text = `${PUMP}${option('do seal, filter', 'fit pump')}option two "Leave it"\n`;
    const { service } = read(text);
    const said = comparisonText(service.decision(uriOf(THIS)));
    expect(said.replace(/\s+/g, ' ')).toContain('one: Injection pump arrives (no work uses it, so all further work waits) → ');
    const hover = service.hover(uriOf(THIS), (HEAD + text).indexOf('"Injection pump"') + 3)?.paragraphs.join('\n');
    expect(hover).toContain('critical; no work uses it, so all further work waits');
  });
});
