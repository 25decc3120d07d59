import { describe, expect, test } from 'vitest';
import { deskOver, uriOf } from '../../src/tools/fuzz/over.js';
import { shapes } from '../../src/tools/fuzz/shapes.js';

/** Characters of a shape here; `measure-shapes.ts` prints the times for a million. */
const SIZE = 60_000;

/** Far more than it takes on a machine that is busy; what grows with the square of the file takes longer. */
const MOST = 1_000;

describe('very much of one thing is parsed, checked and priced at once', () => {
  test.each(Object.keys(shapes))('%s', { timeout: 60_000 }, (name) => {
    const text = shapes[name]?.(SIZE) ?? '';
    const { service } = deskOver(new Map([['job.yard', text]]));
    const started = process.cpuUsage();
    service.allDiagnostics(uriOf('job.yard'));
    const { user, system } = process.cpuUsage(started);
    expect((user + system) / 1000).toBeLessThan(MOST);
    expect(service.tree(uriOf('job.yard'))?.text === text).toBe(true);
  });
});
