import { describe, expect, test } from 'vitest';
import { serviceOver, uriOf } from '../../support/fixture.js';

// What is paid before the customer decides is owed whatever is decided then, and a vehicle that nobody mends is worth what it brings as it stands:
// common practice, and what makes stopping comparable with a repair.

const HEAD = 'steelyard 1\nshop "S"\n  currency EUR\n  workday 8 h\n  rate m 100.00\n  tax t 0% on parts\nestimate "E"\n  start 2026-11-30\n  valid 14 d\nvehicle "Van"\n  worth 7000.00\n  unrepaired 1500.00\nfinding leak "Leaks"\n';
const MEND = 'labour look "Look inside" 1 h done first\n  because leak\noption mend "Mend it"\n  warranty 12 mo\n  do look\n  labour "Mend" 20 h\n';

function problems(stop: string): readonly string[] {
  const { service } = serviceOver({ 'job.yard': `${HEAD}${MEND}${stop}` });
  return service.diagnostics(uriOf('job.yard')).map(({ code, message }) => `${code}: ${message.what}`);
}

/** The cheapest option in all, and what it costs. */
function cheapest(stop: string): string {
  const { service } = serviceOver({ 'job.yard': `${HEAD}${MEND}${stop}` });
  const [first] = service.weighing(uriOf('job.yard')).comparison.ranking;
  return `${first?.option.name ?? ''} ${first?.inAll.likely.toFixed(2) ?? ''}`;
}

describe('an option that only stops', () => {
  test('counts as mended without its worth, and that is told', () => {
    // By hand: one hour of looking, and no worth given up.
    expect(cheapest('option stop "Stop"\n  do look\n')).toBe('stop 100.00');
    expect(problems('option stop "Stop"\n  do look\n')).toEqual(['stop-without-worth: Option stop mends nothing and does not say what the vehicle is worth after it, so it counts as mended: 7,000.00.']);
  });

  test('with its worth gives up the rest: nothing is told, of a warranty neither, nor that it is dearer than the vehicle', () => {
    // By hand: mending is 21 h; stopping is one hour and 7000 − 1500 given up.
    expect(cheapest('option stop "Stop"\n  do look\n  worth 1500.00\n')).toBe('mend 2100.00');
    expect(problems('option stop "Stop"\n  do look\n  worth 1500.00\n')).toEqual([]);
    expect(problems('option scrap "Scrap it"\n  do look\n  worth 0\n')).toEqual([]);
  });

  test('is told where it leaves out what comes before the decision, under whatever name it is written', () => {
    const told = 'first-left-out: “Look inside” is done before the customer decides, and option stop leaves it out.';
    expect(problems('option stop "Stop"\n  worth 1500.00\n')).toEqual([told]);
    expect(problems('option stop "Stop"\n  labour "Look inside" 1 h done first\n  worth 1500.00\n')).toEqual([]);
  });

  test('can’t be worth more unmended than mended', () => {
    expect(problems('option stop "Stop"\n  do look\n  worth 15000.00\n')).toEqual(['unrepaired-over-worth: As it stands the vehicle brings 15,000.00, and repaired it is worth 7,000.00.']);
    // With work of its own it mends something, and may be worth more than before.
    expect(problems('option more "Mend more"\n  warranty 24 mo\n  do look\n  labour "Mend more" 30 h\n  worth 7500.00\n')).toEqual([]);
  });
});

describe('a way in that a plan pays for', () => {
  const way = (says: string) => `access up "Engine up"\n${says}labour seal "Seal" 2 h with up\noption seal "Seal it"\n  warranty 12 mo\n  do look, seal\n`;

  test('comes apart and goes together again, or says that it takes no time', () => {
    expect(problems(way('  remove 2 h\n'))).toEqual(['access-half: “Engine up” says remove, and nothing of refit.']);
    expect(problems(way('  refit 2 h\n'))).toEqual(['access-half: “Engine up” says refit, and nothing of remove.']);
    expect(problems(way('  remove 2 h\n  refit 0 h\n'))).toEqual([]);
  });
});
