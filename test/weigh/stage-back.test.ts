import { expect, test } from 'vitest';
import { readSound } from './weighed.js';

// Which lines putting back adds to a stage. 100.00 an hour; sums by hand.

const TEXT = `steelyard 1
shop "S"
  rate bench 100.00
access front "Front"
  remove 1 h
  refit 2 h
labour strip "Strip" 2 h with front
  uses pump, gasket
part pump "Pump" 90.00 rebuilt
  core 40.00
    assemble 1 h
part gasket "Gasket" 5.00 new
part unit "Unit" 70.00 rebuilt
  core 30.00
    assemble 0.5 h
stage look "Look"
  do strip
  opens front
  put back 3 h
  destroys gasket, unit
option one "One"
  labour "W" 1 h
`;

test('those that it has beyond the stage: closing, the hours of putting back, and new parts with their old cores; what the stage has is not said again', () => {
  const [stage] = readSound(TEXT).comparison.stages;
  const told = (lines: readonly { readonly title: string; readonly amount: { readonly likely: { toFixed: () => string } } }[] = []) => lines.map(({ title, amount }) => `${title} ${amount.likely.toFixed()}`).sort();
  expect(told(stage?.totals.lines)).toEqual(['Front: remove 100', 'Gasket 5', 'Pump 90', 'Pump: core charge 40', 'Pump: put the core together 100', 'Strip 200']);
  expect(told(stage?.backLines)).toEqual(['Front: refit 200', 'Look: put back 300', 'Unit 70', 'Unit: core charge 30', 'Unit: put the core together 50']);
  expect([stage?.putBack.likely.toFixed(), stage?.stop.likely.toFixed()]).toEqual(['650', '1185']);
});
