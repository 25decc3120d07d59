import { describe, expect, test } from 'vitest';
import { compareVersions, textsWithChange } from '../../../src/weigh/changes/index.js';
import { sideOf } from '../../changes/both.js';

// The text of one version with one change made in it, or taken back. Only lines that the change touches are written anew, names
// are those of the version, and a list leaves out what isn't there.

const HEAD = 'steelyard 1\n# as it is\nshop "Bay"\n  rate bench 100.00 usual\n';

type Texts = string | Readonly<Record<string, string>>;

/** Each change with the old text in which it is made alone, and the new one without it. */
function hybrids(before: Texts, after: Texts): ReadonlyMap<string, { readonly alone: string | undefined; readonly without: string | undefined }> {
  const sides = { before: sideOf(typeof before === 'string' ? HEAD + before : before, 'before'), after: sideOf(typeof after === 'string' ? HEAD + after : after, 'after') };
  const read = ({ service, uri }: typeof sides.before) => {
    const { resolved, comparison } = service.weighing(uri);
    return { records: resolved.records, comparison };
  };
  const compared = compareVersions(read(sides.before), read(sides.after));
  return new Map(compared.found.map(({ draft, change: { sort, before: was, after: is } }) => {
    const made = (side: 'before' | 'after') => {
      const base = { side, things: compared[side].things, uri: sides[side].uri, treeOf: sides[side].service.tree };
      const texts = textsWithChange(draft, base, compared[side === 'before' ? 'after' : 'before'].things, compared.matched);
      return texts === undefined ? undefined : [...texts].map(([uri, text]) => (typeof before === 'string' ? text.replace(HEAD, '') : `${uri.replace(/.*\//, '')}: ${text}`)).join('');
    };
    return [`${sort} ${(is ?? was)?.title ?? ''}`, { alone: made('before'), without: made('after') }] as const;
  }));
}

const WORK = 'labour w "W"\n  takes 3 h # in the car\n  takes 1 h with up\n  uses seal, clip\n  caution fuel\n';
/** The same as it is written anew. */
const anew = (hours = '3 h', way = 'up', uses: readonly string[] = ['seal', 'clip'], up = '1 h') => `labour w "W"\n  takes ${hours}\n${way === '' ? '' : `  takes ${up} with ${way}\n`}  caution fuel\n${uses.map((one) => `  uses ${one}\n`).join('')}`;
const JOB = `${WORK}access up "Up"\n  remove 1 h\npart seal "Seal" 4.00 new\npart clip "Clip" 2.00 new\noption one "One"\n  do w\n  way up\n`;

describe('a change alone, and the new text without it', () => {
  test('what a line says: others stay as they are, with their comments', () => {
    const found = hybrids(JOB, JOB.replace('4.00', '5.00').replace('takes 3 h', 'takes 4 h'));
    expect(found.get('moved Seal')).toEqual({ alone: JOB.replace('4.00', '5.00'), without: JOB.replace('takes 3 h', 'takes 4 h') });
    expect(found.get('moved W')).toEqual({ alone: JOB.replace(WORK, anew('4 h')), without: JOB.replace(WORK, anew('3 h')).replace('4.00', '5.00') });
  });

  test('beside another name: each text keeps to its own names', () => {
    const after = JOB.replaceAll('up', 'lift').replace('takes 1 h', 'takes 2 h');
    expect(hybrids(JOB, after).get('moved W')).toEqual({ alone: JOB.replace(WORK, anew('3 h', 'up', ['seal', 'clip'], '2 h')), without: after.replace(/labour[^]*?caution fuel\n/, anew('3 h', 'lift')) });
  });

  test('its own name stays, too', () => {
    const after = JOB.replace('labour w "W"', 'labour work "W"').replace('do w\n', 'do work\n').replace('takes 3 h', 'takes 4 h');
    expect(hybrids(JOB, after).get('moved W')).toEqual({ alone: JOB.replace(WORK, anew('4 h')), without: after.replace(/labour[^]*?caution fuel\n/, anew('3 h').replace('labour w ', 'labour work ')) });
  });

  test('a line that came brings the names with it by which it is used; without it they go', () => {
    const after = `${JOB.replace('seal, clip', 'seal, clip, hose')}part hose "Hose" 9.00 new\n`;
    expect(hybrids(JOB, after).get('came Hose')).toEqual({ alone: `${JOB.replace(WORK, anew('3 h', 'up', ['seal', 'clip', 'hose']))}part hose "Hose" 9.00 new\n`, without: JOB.replace(WORK, anew()) });
  });

  test('a line that went', () => {
    const after = JOB.replace('seal, clip', 'clip').replace('part seal "Seal" 4.00 new\n', '');
    expect(hybrids(JOB, after).get('went Seal')).toEqual({ alone: after.replace(/labour[^]*?caution fuel\n/, anew('3 h', 'up', ['clip'])), without: `${after.replace(/labour[^]*?caution fuel\n/, anew('3 h', 'up', ['clip', 'seal']))}part seal "Seal" 4.00 new\n` });
  });

  test('a name behind a word that brings lines in', () => {
    const after = JOB.replace('seal, clip', 'clip');
    expect(hybrids(JOB, after).get('went Seal')).toEqual({ alone: JOB.replace(WORK, anew('3 h', 'up', ['clip'])), without: JOB.replace(WORK, anew('3 h', 'up', ['clip', 'seal'])) });
    expect(hybrids(after, JOB).get('came Seal')).toEqual({ alone: JOB.replace(WORK, anew('3 h', 'up', ['clip', 'seal'])), without: JOB.replace(WORK, anew('3 h', 'up', ['clip'])) });
  });

  test('a line below another, with all that is below it', () => {
    const below = '  labour "Q" 1 h\n    chance "C" 10 %\n      part "X" 4.00 new\n';
    const plain = JOB.replace('  do w\n  way up\n', '  way up\n  do w\n');
    expect(hybrids(plain, plain + below).get('came Q')).toEqual({ alone: plain + below, without: plain });
    expect(hybrids(plain + below, plain).get('went Q')).toEqual({ alone: plain, without: plain + below });
  });

  test('a line deep below says something else; what is beside it stays', () => {
    const deep = (percent: number) => `option one "One"\n  labour "Q" 1 h\n    chance "C" ${percent} %\n      part "X" 4.00 new\n    chance "D" 20 %\n      part "Y" 5.00 new\n`;
    expect(hybrids(deep(10), deep(15)).get('moved C')).toEqual({ alone: deep(15), without: deep(10) });
  });

  test('names for lines that come along stay', () => {
    const two = 'option two "Two"\n  labour strip "Strip" 1 h\n  labour fit "Fit" 1 h after strip\n';
    expect(hybrids(JOB, JOB + two).get('came Two')).toEqual({ alone: JOB + two, without: JOB });
  });

  test('a line that stands elsewhere', () => {
    const at = (a: string, b: string) => `option a "A"\n  labour "Look" 1 h\n${a}option b "B"\n  labour "Look" 1 h\n${b}`;
    const line = '  part "Hose" 30.00 new\n';
    expect(hybrids(at(line, ''), at('', line)).get('elsewhere Hose')).toEqual({ alone: at('', line), without: at(line, '') });
  });

  test('behind a last line without an end', () => {
    const [before, after] = ['option one "One"\n  part "P" 5.00 new', 'option one "One"\n  part "P" 5.00 new\noption two "Two"\n  part "Q" 6.00 new\n'];
    expect(hybrids(before, after).get('came Two')?.alone).toBe(after);
  });

  test('in a shared file: that file alone; what came stands in the estimate', () => {
    const job = 'steelyard 1\nuse "shop.yard"\noption one "One"\n  labour "W" 1 h\n';
    const shop = (rate: string, more = '') => `steelyard 1\nshop "Bay"\n  rate bench ${rate}\n${more}`;
    const found = hybrids({ 'job.yard': job, 'shop.yard': shop('100.00') }, { 'job.yard': job, 'shop.yard': shop('110.00', 'part seal "Seal" 4.00 new\n') });
    expect(found.get('moved bench')).toEqual({ alone: `shop.yard: ${shop('110.00')}`, without: `shop.yard: ${shop('100.00', 'part seal "Seal" 4.00 new\n')}` });
    expect(found.get('came Seal')).toEqual({ alone: `job.yard: ${job}part seal "Seal" 4.00 new\n`, without: `shop.yard: ${shop('110.00')}` });
  });
});

describe('a list that leaves out what isn’t there', () => {
  const text = (list: string, findings: readonly string[]) => `${findings.map((name) => `finding ${name} "The ${name}"\n`).join('')}labour w "W" 1 h${list === '' ? '' : ` because ${list}`} done last\noption one "One"\n  do w\n`;

  test.each([
    ['the first', 'crack, noise', 'noise'],
    ['the last', 'noise, crack', 'noise'],
    ['one between', 'noise, crack, leak', 'noise, leak'],
    ['the only one, and the word that leads to it', 'crack', ''],
  ])('%s', (_, list, left) => {
    const others = ['noise', 'leak'];
    const [before, after] = [text(list, ['crack', ...others]), text(left, others)];
    const { alone, without } = hybrids(before, after).get('went The crack') ?? {};
    expect(alone?.replaceAll(' ,', ',')).toBe(after);
    // A finding brings nothing in, so no list of the new text names it again by itself.
    expect(without?.replaceAll(' ,', ',')).toBe(`${after}finding crack "The crack"\n`);
  });

  test('the first two at once, which the version never had', () => {
    const others = ['noise', 'leak'];
    const after = text('crack, smell, noise, leak', ['crack', 'smell', ...others]).replace('1 h', '2 h');
    const { alone } = hybrids(text('noise, leak', others), after).get('moved W') ?? {};
    expect(alone?.replaceAll(' ,', ',')).toBe(text('noise, leak', others).replace('1 h', '2 h'));
  });

  test('a name of no line at all stays, as wrong as it was', () => {
    const wrong = 'labour w "W" 1 h after nowhere\noption one "One"\n  do w\n';
    expect(hybrids(wrong, wrong.replace('1 h', '2 h')).get('moved W')).toEqual({ alone: wrong.replace('1 h', '2 h'), without: wrong });
  });

  test('two of several', () => {
    const stage = (list: string) => `stage look "Look"\n  do w\n  destroys ${list}\n`;
    const text2 = (names: readonly string[], list: string) => `${names.map((name) => `part ${name} "P ${name}" 4.00 new\n`).join('')}labour w "W" 1 h\n${stage(list)}option one "One"\n  do w\n`;
    const found = hybrids(text2(['a', 'b', 'c'], 'a, b, c'), text2(['c'], 'c'));
    expect(found.get('went P a')?.alone).toContain('part b "P b" 4.00 new\n');
    expect(found.get('went P a')?.alone?.replaceAll(' ,', ',')).toContain('  destroys b, c\n');
    expect(found.get('went P b')?.alone?.replaceAll(' ,', ',')).toContain('  destroys a, c\n');
  });
});

describe('what can’t be written so', () => {
  const gone = JOB.replace('access up "Up"\n  remove 1 h\n', '').replace('  takes 1 h with up\n', '').replace('  way up\n', '');

  test('a way in that a time or a pin still needs', () => {
    const found = hybrids(JOB, gone);
    expect([found.get('went Up')?.alone, found.get('moved W')?.without, found.get('moved One')?.without]).toEqual([undefined, undefined, undefined]);
    expect(found.get('went Up')?.without).toBe(`${gone}access up "Up"\n  remove 1 h\n`);
    expect(found.get('moved W')?.alone).toBe(JOB.replace(WORK, anew('3 h', '')));
  });

  test('lines that can’t be read', () => {
    const faulty = JOB.replace('caution fuel', 'caution fuel nonsense');
    expect(hybrids(faulty, faulty.replace('takes 3 h', 'takes 4 h')).get('moved W')).toEqual({ alone: undefined, without: undefined });
    expect(hybrids(faulty, faulty.replace('4.00', '5.00')).get('moved Seal')?.alone).toBe(faulty.replace('4.00', '5.00'));
    const indented = JOB.replace('  uses seal, clip\n', '  uses seal, clip\n  whatever\n');
    expect(hybrids(indented, indented.replace('takes 3 h', 'takes 4 h')).get('moved W')?.alone).toBeUndefined();
  });

  test('a line beside or below another that can’t be read', () => {
    const beside = `${JOB}  labour "Q" 1 h\n  labour "R" 1 h whatever\n`;
    expect(hybrids(beside, beside.replace('"Q" 1 h', '"Q" 2 h')).get('moved Q')).toEqual({ alone: undefined, without: undefined });
  });

  test.each([
    ['indented at the head of the file', '  part seal "Seal" 4.00 new\n  part clip "Clip" 2.00 new\n'],
    ['longer than a line may be', `part clip "Clip" 2.00 new\n  note "${'so '.repeat(700)}"\n`],
  ])('a line that was left out, since it is %s: the text anew would lose it', (_, clip) => {
    const job = (price: string) => ({ 'job.yard': `${clip.replace('2.00', price)}${HEAD}option one "One"\n  fit clip\n` });
    expect([...hybrids(job('2.00'), job('3.00'))]).toEqual([['moved Clip', { alone: undefined, without: undefined }]]);
  });

  test('lines that are only indented unevenly are written anew', () => {
    const uneven = 'option one "One"\n    labour "Q" 1 h\n  labour "R" 1 h\n';
    const even = (hours: string) => `option one "One"\n  labour "Q" ${hours}\n  labour "R" 1 h\n`;
    expect(hybrids(uneven, uneven.replace('1 h', '2 h')).get('moved Q')).toEqual({ alone: even('2 h'), without: even('1 h') });
  });

  test('a line below one that the version doesn’t have goes with that', () => {
    const below = 'option two "Two"\n  labour "Q" 1 h\n';
    expect([...hybrids(JOB, JOB + below).keys()]).toEqual(['came Two']);
  });
});
