import { describe, expect, test } from 'vitest';
import { serviceOver, uriOf } from '../support/fixture.js';

const head = 'steelyard 1\nshop "Bench"\n  currency USD\n  rate bench 100.00\n';

function weigh(text: string, files: Readonly<Record<string, string>> = {}) {
  const { service } = serviceOver({ ...files, 'estimate.yard': text });
  const { comparison, resolved } = service.weighing(uriOf('estimate.yard'));
  const totals = Object.fromEntries(comparison.options.map(({ option, totals: { total }, complete }) => [option.name, complete ? total.likely.toFixed(2) : 'incomplete']));
  return { comparison, estimate: resolved.estimate, totals, said: service.diagnostics(uriOf('estimate.yard')).map(({ code }) => code) };
}

describe('names', () => {
  test('a part and a job may share one', () => {
    const { totals, said } = weigh(`${head}part pump "Pump" 60.00 new\nlabour pump "Fit the pump" 1 h\n  uses pump\noption fix "Fix"\n  do pump\n`);
    expect(said).toEqual([]);
    expect(totals).toEqual({ fix: '160.00' });
  });

  test('reach into shared files and back', () => {
    const shared = { 'jobs.yard': 'steelyard 1\nlabour swap "Swap" 2 h class looking with out\n  needs drain\n' };
    const { totals, said } = weigh(`${head}  rate looking 150.00\nuse "jobs.yard"\naccess out "Out"\n  remove 1 h\n  class looking\nlabour drain "Drain" 1 h class bench\noption used "Used"\n  do swap\n`, shared);
    expect(said).toEqual([]);
    expect(totals).toEqual({ used: '550.00' });
  });

  test('may be used before the line that has them', () => {
    expect(weigh(`${head}option fix "Fix"\n  do pump\nlabour pump "Pump" 1 h\n  uses seal\npart seal "Seal" 5.00 new\n`).totals).toEqual({ fix: '105.00' });
  });
});

describe('what an option brings along', () => {
  test('goods are charged once, however many jobs use them and however they are named', () => {
    const text = `${head}part oil "Oil" 30.00 new\nsublet wash "Wash" 40.00\nlabour a "A" 1 h\n  uses oil, wash\nlabour b "B" 1 h\n  uses oil, wash\noption fix "Fix"\n  do a, b\n  fit oil\n  send wash\n`;
    const { totals, comparison } = weigh(text);
    expect(totals).toEqual({ fix: '270.00' });
    expect(comparison.options[0]?.option.parts).toHaveLength(1);
    expect(comparison.options[0]?.option.sublets).toHaveLength(1);
  });

  test('each option is charged for itself', () => {
    expect(weigh(`${head}part oil "Oil" 30.00 new\nlabour a "A" 1 h\n  uses oil\noption one "One"\n  do a\noption two "Two"\n  do a\n`).totals).toEqual({ one: '130.00', two: '130.00' });
  });

  test('needs bring jobs with their goods, through several steps, once', () => {
    const text = `${head}part seal "Seal" 5.00 new\nlabour head "Head" 4 h\n  needs cover, drain\nlabour cover "Cover" 2 h\n  needs drain\n  uses seal\nlabour drain "Drain" 1 h\noption fix "Fix"\n  do head\n`;
    const { totals, comparison } = weigh(text);
    expect(comparison.options[0]?.option.labour.map(({ name }) => name)).toEqual(['head', 'cover', 'drain']);
    expect(totals).toEqual({ fix: '705.00' });
  });

  test('a job inside an option can need one outside', () => {
    expect(weigh(`${head}labour drain "Drain" 1 h\noption fix "Fix"\n  labour "Own" 2 h needs drain\n`).totals).toEqual({ fix: '300.00' });
  });

  test('a tool that must be hired is charged once; an owned one is not', () => {
    const text = `${head}  tool bar "Bar"\ntool lock "Lock set" 60.00\nlabour a "A" 1 h\n  needs lock, bar\nlabour b "B" 1 h\n  needs lock\noption fix "Fix"\n  do a, b\n`;
    expect(weigh(text).totals).toEqual({ fix: '260.00' });
  });

  test('a way in gives what it includes, without paying for it', () => {
    const text = `${head}access lifted "Lifted"\n  remove 1 h\naccess out "Out"\n  includes lifted\n  remove 5 h\nlabour a "A" 1 h with lifted\nlabour b "B" 1 h with out\noption fix "Fix"\n  do a, b\n`;
    expect(weigh(text).totals).toEqual({ fix: '700.00' });
  });
});

describe('faults spoil what rests on them and nothing else', () => {
  const two = (fault: string) => `${head}${fault}\nlabour swap "Swap" 2 h\n  uses mounts\noption used "Used"\n  do swap\noption stop "Stop"\n  fee "Tow" 120.00\n`;
  test.each([
    ['a part that a job uses', 'part mounts "Mounts" 2,000 new', ['thousands-comma']],
    ['a part of an unknown kind', 'prat mounts "Mounts" 20.00 new', ['unknown-kind']],
    ['a part without its price', 'part mounts "Mounts" new', ['price-missing']],
    ['a part without its title', 'part mounts 20.00 new', ['title-missing']],
    ['a part whose title is not closed', 'part mounts "Mounts 20.00 new', ['open-text']],
    ['a part that is not there', '', ['unknown-name']],
  ])('%s', (_, fault, codes) => {
    const { said, totals } = weigh(two(fault));
    expect(said).toEqual(codes);
    expect(totals).toEqual({ used: 'incomplete', stop: '120.00' });
  });

  test('a shared file that is missing spoils what needs it, where the shop is here', () => {
    expect(weigh(two('use "parts.yard"'))).toMatchObject({ said: ['use-missing'], totals: { used: 'incomplete', stop: '120.00' } });
  });

  test('and everything where the shop may be in it', () => {
    expect(weigh('steelyard 1\nuse "shop.yard"\noption stop "Stop"\n  fee "Tow" 120.00\n')).toMatchObject({ said: ['use-missing'], totals: { stop: 'incomplete' } });
  });

  test('a shop that can’t be told from its first word spoils everything, with one message', () => {
    expect(weigh(two('').replace('shop "Bench"', 'shpo "Bench"').replace('uses mounts', 'caution oil'))).toMatchObject({ said: ['unknown-kind'], totals: { used: 'incomplete', stop: 'incomplete' } });
  });
});
