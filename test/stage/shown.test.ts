import { describe, expect, it } from 'vitest';
import { serviceOver, uriOf } from '../support/fixture.js';
import { worked } from './worked.js';

const FILE = 'one.yard';

function over(text: string) {
  const { service } = serviceOver({ [FILE]: text });
  return { service, uri: uriOf(FILE) };
}

describe('a stage in the editor', () => {
  it('has above it its price and that of putting back', () => {
    const labels = (text: string) => {
      const { service, uri } = over(text);
      return service.lenses(uri).filter(({ figure }) => figure?.startsWith('stage.') === true).map(({ range, label }) => `${text.slice(range.start, range.end).slice(0, 15)}: ${label}`);
    };
    expect(labels(worked)).toEqual(['stage tear-down: 630.00 alone · 745.00 to put back']);
    expect(labels(worked.replace('takes 4 h with front-off', 'takes 4,0 h with front-off'))).toEqual(['stage tear-down: Not weighed: a line that it rests on can’t be read or reached']);
  });

  it('says on hover what it comes to', () => {
    const { service, uri } = over(worked);
    expect(JSON.stringify(service.hover(uri, worked.indexOf('tear-down')))).toContain('Alone 630.00; where the customer stops there, putting it back adds 745.00, 1,375.00 in all. It is in the total of every option, once. It destroys: Bolts.');
  });

  it('is found by its name: where it is authorised, and when it is renamed', () => {
    const text = `${worked}authorised 630.00 for tear-down on 2026-11-24\n`;
    const { service, uri } = over(text);
    const edits = service.rename(uri, text.indexOf('tear-down'), 'front', []);
    if ('refused' in edits) throw new Error(edits.refused);
    expect([...edits.values()].flat()).toHaveLength(2);
  });

  it('after a row of edits all is as if it were read afresh', () => {
    let text = worked;
    const { host, service: live } = serviceOver({ [FILE]: text });
    const figures = (service: typeof live) => {
      const { comparison } = service.weighing(uriOf(FILE));
      return [...comparison.stages.map(({ stage, totals, stop, complete }) => `${stage.name} ${totals.total.likely.toFixed()} ${stop.likely.toFixed()} ${complete}`), ...comparison.options.map(({ option, totals, complete, ready }) => `${option.name} ${totals.total.likely.toFixed()} ${complete} ${ready.date ?? ''}`)];
    };
    const edits: readonly (readonly [string, string])[] = [
      ['remove 2 h', 'remove 3 h'], ['  destroys bolts\n', ''], ['put back 3.5 h', 'put back 4 h'], ['  opens front-off\n', '  opens front-off, out\n'], ['  do strip\n', '  do strip, head\n'],
      ['stage tear-down "Take', 'stage "Take'], ['stage "Take', 'stage apart "Take'], ['5% of labour cap 30.00', '5% of labour'], ['rate bench 100.00', 'rate bench 90.00'], ['unrepaired 500.00', 'unrepaired 600.00'],
    ];
    for (const [from, to] of edits) {
      expect(text).toContain(from);
      text = text.replace(from, to);
      host.set(FILE, text);
      expect(figures(live)).toEqual(figures(serviceOver({ [FILE]: text }).service));
    }
  });
});
