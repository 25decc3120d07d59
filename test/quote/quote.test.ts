import { describe, expect, test } from 'vitest';
import { LARGEST_PICTURE, MOST_PICTURES, picturesWanted, quoteForm, quoteOf, type PictureFile, type PictureFiles } from '../../src/report/quote/index.js';
import { decisionOf, quoteOfText } from './made.js';

const PNG = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3);
const JPEG = Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0);
const WEBP = new TextEncoder().encode('RIFF\u0001\u0002\u0003\u0004WEBPVP8 ');
const read = (bytes: Uint8Array): PictureFile => ({ kind: 'read', bytes });

const BASE = 'steelyard 1\noption one "One"\n  fee "Tow" 100.00\n';

describe('pictures', () => {
  const seen = (paths: readonly string[]) => `${BASE}finding "Seen"\n${paths.map((one) => `  picture "${one}"\n`).join('')}`;
  const of = (path: string, file: PictureFile | undefined) => quoteOfText(seen([path]), 'one', file === undefined ? new Map() : new Map([[`/w/${path}`, file]])).findings[0]?.pictures[0];

  test.each([
    ['a.png', read(PNG), 'data:image/png;base64,iVBORw0KGgoBAgM='],
    ['a.jpg', read(JPEG), 'data:image/jpeg;base64,/9j/4AA='],
    ['a.webp', read(WEBP), 'data:image/webp;base64,UklGRgECAwRXRUJQVlA4IA=='],
    ['named-wrongly.png', read(JPEG), 'data:image/jpeg;base64,/9j/4AA='],
  ])('%s is shown by its first bytes', (path, file, data) => expect(of(path, file)).toEqual({ kind: 'shown', name: path, data }));

  test.each([
    ['gone.png', undefined, 'missing', 'not there'],
    ['gone.png', { kind: 'outside' } as const, 'outside', 'outside the folder'],
    ['page.png', read(new TextEncoder().encode('<svg onload=alert(1)>')), 'no-picture', 'not a picture'],
    ['large.png', read(new Uint8Array(LARGEST_PICTURE + 1)), 'too-large', 'too large'],
    ['empty.png', read(new Uint8Array(0)), 'no-picture', 'not a picture'],
  ])('%s: a word in its place (%#)', (path, file, why, says) => {
    expect(of(path, file)).toEqual({ kind: 'absent', name: path, why });
    const quote = quoteOfText(seen([path]), 'one', file === undefined ? new Map() : new Map([[`/w/${path}`, file]]));
    for (const form of ['html', 'text', 'markdown'] as const) expect(quoteForm(quote, form).replace(/\s+/g, ' ')).toContain(says);
  });

  test('paths out of the workspace are never asked for', () => {
    const { comparison: { estimate } } = decisionOf(seen(['../out.png', '/etc/out.png', 'in.png', 'in.svg']));
    expect(picturesWanted(estimate.findings)).toEqual(['/w/in.png']);
  });

  test('no more than ten are sent along', () => {
    const paths = Array.from({ length: MOST_PICTURES + 2 }, (_, i) => `p${i}.png`);
    const files: PictureFiles = new Map(paths.map((one) => [`/w/${one}`, read(PNG)]));
    const kinds = quoteOfText(seen(paths), 'one', files).findings[0]?.pictures.map((one) => (one.kind === 'shown' ? one.kind : one.why));
    expect(kinds).toEqual([...Array<string>(MOST_PICTURES).fill('shown'), 'too-many', 'too-many']);
  });

  test('megabytes are encoded whole', () => {
    const bytes = Uint8Array.from({ length: 200_000 }, (_, i) => (i < 8 ? (PNG[i] as number) : (i * 31) % 256));
    const picture = of('a.png', read(bytes));
    expect(picture?.kind === 'shown' ? Buffer.from(picture.data.split(',')[1] ?? '', 'base64').equals(bytes) : picture).toBe(true);
  });
});

describe('no quote where a line would be missing', () => {
  test.each([
    ['a price that can’t be read', 'steelyard 1\noption one "One"\n  part "Pump" 1,250.00 new\n', 'incomplete'],
    ['a day to start that can’t be read', 'steelyard 1\nestimate "E"\n  start tomorrow\noption one "One"\n  part "Pump" 20.00 new\n', 'incomplete'],
    ['a validity that can’t be read', 'steelyard 1\nestimate "E"\n  valid 30 days\noption one "One"\n  part "Pump" 20.00 new\n', 'incomplete'],
    ['a part without a price', 'steelyard 1\noption one "One"\n  part "Pump" new\n', 'incomplete'],
    ['a name that nothing has', 'steelyard 1\noption one "One"\n  fit nothing\n', 'incomplete'],
    ['work without a rate', 'steelyard 1\noption one "One"\n  labour "Pump" 2 h\n', 'incomplete'],
    ['no option at all', 'steelyard 1\nvehicle "Van"\n', 'no-option'],
  ])('%s', (_, text, kind) => {
    const decision = decisionOf(text);
    const named = decision.comparison.options[0]?.option.name;
    expect(quoteOf(decision, named, new Map()).kind).toBe(kind);
  });

  test('an option that nobody wrote', () => {
    expect(quoteOf(decisionOf(BASE), 'other', new Map())).toEqual({ kind: 'no-option', name: 'other' });
  });

  test('another option that is broken is not in the table of those that were weighed', () => {
    const quote = quoteOfText(`${BASE}option two "Two"\n  fit nothing\n`, 'one');
    expect(quote.weighed.map(({ title }) => title)).toEqual(['One']);
  });
});

describe('what is said of a line', () => {
  const shop = 'steelyard 1\nshop "Bay"\n  rate bench 100.00\n';

  // 16 CFR 20.1 (check-values: read): used must be said; what nobody stated is not passed off as new.
  test.each([
    ['new', 'new'], ['aftermarket', 'new, by another maker'], ['rebuilt', 'rebuilt'], ['used', 'used'], ['', 'condition not stated'],
  ])('a part that is “%s”', (condition, says) => {
    expect(quoteForm(quoteOfText(`${shop}option one "One"\n  part "Pump" 10.00 ${condition}\n`), 'text')).toMatch(new RegExp(`Pump · ${says} +\\d`));
  });

  test('what the customer brings is fitted and not charged', () => {
    const quote = quoteOfText(`${shop}option one "One"\n  part "Pump" customer-supplied\n  fee "Tow" 5.00\n`);
    expect(quote.groups.find(({ kind }) => kind === 'parts')).toMatchObject({ amount: '0.00' });
    expect(quoteForm(quote, 'text').replace(/\s+/g, ' ')).toContain('brought by you: fitted, not');
  });

  test('outside work is named as such among what getting in takes', () => {
    const text = `${shop}access out "Out"\n  remove 1 h\n  sublet "Alignment" 95.00\noption one "One"\n  labour "Pump" 2 h with out\n  sublet "Machine shop" 50.00\n`;
    const out = quoteForm(quoteOfText(text), 'text');
    expect(out).toMatch(/Alignment · outside work +95\.00/);
    expect(out).toMatch(/Work that we give to another firm[^]*Machine shop +50\.00/);
    expect(out).toContain('work that is given to another firm');
  });

  test('a core that goes back too late brings nothing, and it says so', () => {
    const text = `${shop}estimate "E"\n  written 2026-11-02\noption one "One"\n  labour "Swap" 90 h\n  part "Unit" 100.00 rebuilt\n    core 50.00 due 1 d\n`;
    const quote = quoteOfText(text);
    expect(quote).toMatchObject({ comesBack: '0.00', deposits: [{ late: true, refund: '0.00', until: '2026-11-03' }] });
    expect(quoteForm(quote, 'text').replace(/\s+/g, ' ')).toContain('must go back by November 3, 2026. The work is planned to end later, so nothing is expected back.');
  });

  test('without dates it speaks of working days, and promises none', () => {
    const out = quoteForm(quoteOfText(`${shop}option one "One"\n  labour "Pump" 20 h\n`), 'text');
    expect(out).toContain('We expect the work to take 3 working days. This is what we expect, not a');
    expect(out).not.toContain('Valid until');
  });

  // The last of a month that has no such day: ISO 8601 leaves it open; as the calendar of the house counts.
  test.each([['14 d', '2027-02-14'], ['2 wk', '2027-02-14'], ['1 mo', '2027-02-28']])('an offer of %s from 31 January 2027', (valid, until) => {
    expect(quoteOfText(`${BASE}estimate "E"\n  written 2027-01-31\n  valid ${valid}\n`).validUntil).toBe(until);
  });

  test('a chance below another says so, and adds on top of it', () => {
    const text = `${shop}option one "One"\n  labour "Pump" 2 h\n  chance "Bolt breaks" 10%\n    part "Bolt" 10.00 new\n    chance "Thread is gone" 50%\n      part "Insert" 4.00 new\n  chance "Fails later" 5% comeback\n    part "Pump" 80.00 new\n`;
    expect(quoteOfText(text).couldBeFound.map(({ title, after, amount }) => [title, after, amount])).toEqual([['Bolt breaks', undefined, '10.00'], ['Thread is gone', 'Bolt breaks', '4.00']]);
  });
});
