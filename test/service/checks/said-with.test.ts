import { describe, expect, test } from 'vitest';
import { createLanguageService } from '../../../src/service/index.js';
import { serviceOver, uriOf } from '../../support/fixture.js';

// What a check says and where it points, beyond that it speaks. 100.00 an hour, sums by hand; what speaks of a slip is common practice.

const THIS = 'this.yard';
const HEAD = 'steelyard 1\nshop "S"\n  workday 8 h\n  rate bench 100.00\n  tax sales 7% on parts\n';

/** Each thing that a code says of an estimate: the marked words, the first part of the message, and the words that it points to. */
function told(code: string, lines: string, shop = ''): readonly { readonly at: string; readonly what: string; readonly other: string | undefined }[] {
  const text = `${HEAD}${shop}estimate "E"\n  start 2026-11-30\n  valid 14 d\nfinding seen "Seen"\nlabour seal "Front seal" 2 h\n  because seen\n${lines}`;
  const { service } = serviceOver({ [THIS]: text });
  const all = [...service.allDiagnostics(uriOf(THIS)).values()].flat();
  expect(all.filter(({ severity }) => severity === 'error').map(({ text: words }) => words)).toEqual([]);
  const words = ({ start, end }: { readonly start: number; readonly end: number }) => text.slice(start, end).split('\n')[0] ?? '';
  return all.filter((one) => one.code === code).map(({ range, message, related }) => ({ at: words(range), what: message.what, other: related === undefined ? undefined : words(related.place.range) }));
}

const MEND = 'option mend "Mend it"\n  do seal\n  warranty 12 mo\n';
const STOP = 'option stop "Stop"\n  labour "Put it together" 1 h\n    because seen\n';

describe('more billed than was authorised', () => {
  const closed = (billed: string, more = '') => `${MEND}${STOP}authorised 200.00 for mend on 2026-11-25\n${more}started on 2026-11-30\nclosed for mend on 2026-11-30\n  billed ${billed}\n`;
  const code = 'billed-above-authorised';

  test('says by how much, and the room that the shop has without asking, where it has any', () => {
    expect(told(code, closed('230.00'), '  overrun 10%\n')).toEqual([{ at: '230.00', what: '230.00 was billed for mend, and 200.00 was authorised: 30.00 more, with a room of 20.00.', other: 'authorised 200.00 for mend on 2026-11-25' }]);
    expect(told(code, closed('230.00')).map(({ what }) => what)).toEqual(['230.00 was billed for mend, and 200.00 was authorised: 30.00 more, and there is no room without asking.']);
    expect([told(code, closed('220.00'), '  overrun 10%\n'), told(code, closed('200.00'))]).toEqual([[], []]);
  });

  test('is told of what was done, not of what was authorised beside it', () => {
    // Putting it together is 100.00 today, far above the 20.00 that were authorised for it, and was not done.
    expect(told(code, closed('200.00', 'authorised 20.00 for stop on 2026-11-24\n'))).toEqual([]);
    expect(told(code, closed('230.00', 'authorised 20.00 for stop on 2026-11-24\n'))).toHaveLength(1);
  });
});

describe('closed for something else than was authorised', () => {
  const code = 'closed-unauthorised';
  const lines = (authorised: string, closed = 'for stop ') => `${MEND}${STOP}${authorised}started on 2026-11-30\nclosed ${closed}on 2026-11-30\n`;

  test('points to what was authorised last for the other option', () => {
    expect(told(code, lines('authorised 200.00 for mend on 2026-11-25\nauthorised 240.00 for mend on 2026-11-26\n'))).toEqual([
      { at: 'stop', what: 'By this stop was done; mend is what was authorised last.', other: 'authorised 240.00 for mend on 2026-11-26' },
    ]);
    expect(told(code, lines('authorised 90.00 for stop on 2026-11-25\nauthorised 240.00 for mend on 2026-11-26\n')).map(({ other }) => other)).toEqual(['authorised 240.00 for mend on 2026-11-26']);
  });

  test('points to the option’s own, though a stage was authorised later', () => {
    const stage = 'labour look "Look" 1 h\n  because seen\nstage tear-down "Take it apart"\n  do look\n  put back 0 h\n';
    expect(told(code, stage + lines('authorised 240.00 for mend on 2026-11-24\nauthorised 100.00 for tear-down on 2026-11-25\n')).map(({ what, other }) => [what, other])).toEqual([
      ['By this stop was done; mend is what was authorised last.', 'authorised 240.00 for mend on 2026-11-24'],
    ]);
  });

  test('is silent where that was authorised after all, and where nothing was done', () => {
    expect(told(code, lines('authorised 240.00 for mend on 2026-11-25\nauthorised 90.00 for stop on 2026-11-26\n'))).toEqual([]);
    expect(told(code, lines('authorised 200.00 for mend on 2026-11-25\n', ''))).toEqual([]);
  });
});

describe('a chance of goods that are there anyway', () => {
  const code = 'chance-of-what-is-done';
  const goods = 'part ring "Ring" 9.00 new\nsublet skim "Skim" 60.00\nfee shop "Shop supplies" 4.00\n';
  const marked = (lines: string) => told(code, lines).map(({ at }) => at);
  const worn = (...below: readonly string[]) => `  chance "Worn" 20%\n${below.map((line) => `    ${line}\n`).join('')}`;

  test('is told for parts and outside work, at the first that it names; a fee is charged each time', () => {
    const one = `${goods}${MEND}  fit ring\n  send skim\n  charge shop\n`;
    expect(marked(one + worn('send skim'))).toEqual(['skim']);
    expect(marked(one + worn('fit ring', 'send skim'))).toEqual(['ring']);
    expect(marked(one.replace('  send skim\n', '') + worn('fit ring', 'send skim'))).toEqual([]);
    expect(marked(one + worn('charge shop'))).toEqual([]);
    expect(marked(one + worn('fit ring', 'charge shop'))).toEqual([]);
  });

  test('is told where a way in that is paid brings them', () => {
    const ways = `${goods}access up "Up"\n  remove 1 h\n  uses ring\naccess off "Off"\n  remove 2 h\n  uses skim\nlabour open "Open" 1 h with up\n  because seen\nlabour clean "Clean" 1 h with off\n  because seen\n`;
    const one = (jobs: string) => `${ways}option mend "Mend it"\n  do ${jobs}\n  warranty 12 mo\n`;
    expect(marked(one('open, clean') + worn('fit ring'))).toEqual(['ring']);
    expect(marked(one('open, clean') + worn('send skim'))).toEqual(['skim']);
    expect(marked(one('open') + worn('send skim'))).toEqual([]);
    expect(marked(one('clean') + worn('fit ring'))).toEqual([]);
  });

  test('is told of its line where it names nothing', () => {
    expect(told(code, `${MEND}  chance "Worn" 20%\n`)).toEqual([]);
  });
});

describe('a price far from the usual one', () => {
  const code = 'price-far-off';
  const USUAL = 'part oil "Engine oil" 7.90 new\n';
  const prices = (part: string, usual = USUAL) => told(code, `${usual}${MEND}  ${part}\n`);

  test('is told from ten times on, up and down, whatever the case of its title', () => {
    expect(prices('part " engine OIL " 79.00 new')).toEqual([{ at: '79.00', what: '“ engine OIL ” is 79.00 here, and 7.90 on its other line.', other: '7.90' }]);
    expect(prices('part "Engine oil" 0.79 new').map(({ what }) => what)).toEqual(['“Engine oil” is 0.79 here, and 7.90 on its other line.']);
    expect([prices('part "Engine oil" 78.99 new'), prices('part "Engine oil" 0.80 new')]).toEqual([[], []]);
  });

  test('is no such for another condition, or another thing', () => {
    expect([prices('part "Engine oil" 79.00 used'), prices('part "Gear oil" 79.00 new')]).toEqual([[], []]);
  });

  test('holds prices against prices and costs against costs', () => {
    expect(prices('part "Engine oil" cost 79.00 new', 'part oil "Engine oil" cost 7.90 new\n').map(({ at }) => at)).toEqual(['79.00']);
    expect(prices('part "Engine oil" cost 79.00 new')).toEqual([]);
    expect(prices('part "Engine oil" 79.00 new', 'part oil "Engine oil" cost 7.90 new\n')).toEqual([]);
    for (const usual of [USUAL, 'part oil "Engine oil" cost 7.90 new\n']) expect(told('check-failed', `${usual}${MEND}  part "Engine oil" cost 79.00 new\n`)).toEqual([]);
  });

  test('looks at every named line of that title, and not at these among themselves', () => {
    const two = `${USUAL}part drum "Engine oil" 60.00 new\n`;
    expect(prices('part "Engine oil" 79.00 new', two).map(({ other }) => other)).toEqual(['7.90']);
    expect(prices('part "Engine oil" 6.00 new', two).map(({ other }) => other)).toEqual(['60.00']);
    expect(prices('fit oil', `${USUAL}part drum "Engine oil" 90.00 new\n`)).toEqual([]);
  });
});

describe('work that takes no time', () => {
  test('is told at the hours of 0 in the car alone', () => {
    const job = 'access up "Up"\n  remove 1 h\nlabour other "Other"\n  takes 0 h\n  takes 2 h with up\n';
    expect(told('work-without-time', `${job}option mend "Mend it"\n  do seal, other\n  warranty 12 mo\n`)).toEqual([{ at: '0 h', what: '“Other” takes 0 h in the car.', other: undefined }]);
  });
});

describe('work that a finding rules out', () => {
  const lines = (jobs: string) => `finding thin "Bores too wide"\n  rules out bore\nlabour bore "Cut the bores" 4 h\n  because seen\noption mend "Mend it"\n  do ${jobs}\n  labour "Look again" 1 h\n    because seen\n  warranty 12 mo\n`;

  test('is told of that job alone', () => {
    expect(told('ruled-out-work', lines('seal, bore'))).toEqual([{ at: 'option mend "Mend it"', what: 'Option mend does “Cut the bores”, and the finding “Bores too wide” speaks against that work.', other: 'finding thin "Bores too wide"' }]);
    expect(told('ruled-out-work', lines('seal'))).toEqual([]);
  });
});

describe('a start on a day on which the shop is closed', () => {
  test('is told where that is the day of writing, too', () => {
    const text = `${HEAD}estimate "E"\n  written 2026-11-29\n  start 2026-11-29\n  valid 14 d\nlabour seal "Front seal" 2 h\n${MEND}`;
    const { service } = serviceOver({ [THIS]: text });
    expect(service.diagnostics(uriOf(THIS)).filter(({ code }) => code.startsWith('start-')).map(({ code, message }) => [code, message.what])).toEqual([['start-on-closed-day', 'The shop is closed on 2026-11-29.']]);
  });
});

describe('a picture', () => {
  const codes = (picture: string, exists?: (uri: string) => boolean) => {
    const text = `${HEAD}estimate "E"\nfinding leak "Leak"\n  picture "${picture}"\nlabour seal "Front seal" 2 h\n${MEND}`;
    const service = createLanguageService({ read: () => ({ text }), resolvePath: (_, file) => (file.startsWith('..') ? undefined : `/w/${file}`), ...(exists === undefined ? {} : { exists }) });
    return service.diagnostics('/w/this.yard').map(({ code }) => code).filter((code) => code === 'picture-missing' || code === 'check-failed');
  };

  test('is looked for where the host can tell, and where it may be', () => {
    expect([codes('a.png', () => false), codes('a.png', () => true), codes('a.png')]).toEqual([['picture-missing'], [], []]);
    expect(codes('../a.png', () => false)).toEqual([]);
  });
});

describe('outside work that leaves before anything is apart', () => {
  const GOODS = 'sublet wash "Wash" 20.00\nsublet skim "Skim" 60.00 back in 2 d\nsublet bore "Bore" 90.00 back in 4 d\nlabour clean "Clean" 1 h\n  because seen\nsublet late "Late" 30.00 back in 1 d\n  after clean\n';
  const away = (job: string) => told('sent-away-whole', `${GOODS}labour head "Head" 8 h\n  because seen\n${job}option mend "Mend it"\n  do seal, clean, head\n  warranty 12 mo\n`).map(({ at, what }) => [at, what]);
  const said = (sublet: string) => [['labour head "Head" 8 h', `“Head” does not say when things are apart, so the calendar sends “${sublet}” away before it begins.`]];

  test('is told once of a job, with the first that is away for a while', () => {
    expect([away('  uses wash, skim, bore\n'), away('  uses bore, skim, wash\n'), away('  uses late, bore\n')]).toEqual([said('Skim'), said('Bore'), said('Bore')]);
  });

  test('is none where it says when, where it is done first or last, and where nothing is away or it comes after something', () => {
    expect(['  uses skim\n  apart after 4 h\n', '  uses skim\n  done first\n', '  uses skim\n  done last\n', '  uses wash\n', '  uses late\n'].map(away)).toEqual([[], [], [], [], []]);
  });
});

describe('a part that is sold against an old one', () => {
  const core = (part: string) => told('part-without-core', `${MEND}  ${part}\n`).map(({ at }) => at);

  test('says so of its core: what is rebuilt, and an engine in exchange though it is used', () => {
    expect(core('part "Starter" 180.00 rebuilt')).toEqual(['part "Starter" 180.00 rebuilt']);
    expect(core('part "Exchange engine" 1800.00 used')).toEqual(['part "Exchange engine" 1800.00 used']);
    expect([core('part "Used engine" 900.00 used'), core('part "Starter" 180.00 new'), core('part "Exchange engine" 1800.00 new'), core('part "Starter" 180.00 rebuilt\n    core 50.00 due 30 d')]).toEqual([[], [], [], []]);
  });
});
