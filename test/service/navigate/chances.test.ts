import { describe, expect, test } from 'vitest';
import { atCursor, edited, said } from './cursor.js';

const TEXT = `
--- heron.yard
steelyard 1
shop "Corner Bay"
  rate bench 100.00
part casting "Bare head" 690.00 used
sublet face "Face" 40.00
  after strip
labour strip "Strip" 3 h
  chance cracked "It is cracked" 12%
    fit casting
    chance guides "Its guides are worn" 40%
      send face
labour up "Head on" 2 h
  after strip, face, casting
option repair "Repair"
  do strip, up
  send face
  chance leaks "It leaks again" 3% comeback
    do up
inspect dye "Dye" 20.00
  finds cracked 90%
  finds guides 60%
inspect look "Look" 10.00
  finds cracked 40%
coverage plan "Plan" recall
  until 2027-01-01
  covers up, repair
`;

function places(marked: readonly [string, string], which: 'definition' | 'references'): string[] {
  const { service, uri, offset, others, texts } = atCursor(TEXT.replace(...marked));
  return (which === 'definition' ? service.definition(uri, offset) : service.references(uri, offset, others)).map((place) => said(texts, place));
}

describe('a chance', () => {
  test('is found below the work it belongs to, and below another chance', () => {
    expect(places(['finds cracked 90', 'finds cra$0cked 90'], 'definition')).toEqual(['heron.yard:8: cracked']);
    expect(places(['finds guides', 'finds gui$0des'], 'definition')).toEqual(['heron.yard:10: guides']);
  });

  test('is used by the inspections that look for it', () => {
    expect(places(['chance cracked', 'chance crac$0ked'], 'references')).toEqual(['heron.yard:8: cracked', 'heron.yard:20: cracked', 'heron.yard:23: cracked']);
    expect(places(['chance leaks', 'chance le$0aks'], 'references')).toEqual(['heron.yard:17: leaks']);
  });

  test('is renamed where it stands and where it is named', () => {
    const { service, uri, offset, texts } = atCursor(TEXT.replace('finds cracked 40', 'finds crac$0ked 40'));
    expect(service.prepareRename(uri, offset)).toMatchObject({ name: 'cracked' });
    const edits = service.rename(uri, offset, 'head-cracked', []);
    const after = edited(texts, edits as Exclude<typeof edits, { readonly refused: string }>)['heron.yard'] as string;
    expect(after).toBe((texts['heron.yard'] as string).replaceAll('cracked 90', 'head-cracked 90').replace('cracked 40', 'head-cracked 40').replace('chance cracked', 'chance head-cracked'));
  });

  test('keeps its name to itself: another chance can’t take it, a part may', () => {
    const { service, uri, offset } = atCursor(TEXT.replace('chance leaks', 'chance le$0aks'));
    expect(service.rename(uri, offset, 'guides', [])).toEqual({ refused: 'There is already a chance line called guides in heron.yard.' });
    expect(service.rename(uri, offset, 'casting', [])).not.toHaveProperty('refused');
  });
});

describe('what is waited for, and what is covered', () => {
  test('is found by the kind that has the name', () => {
    expect(places(['after strip, face', 'after st$0rip, face'], 'definition')).toEqual(['heron.yard:7: strip']);
    expect(places(['after strip, face', 'after strip, fa$0ce'], 'definition')).toEqual(['heron.yard:5: face']);
    expect(places(['face, casting', 'face, cas$0ting'], 'definition')).toEqual(['heron.yard:4: casting']);
    expect(places(['covers up, repair', 'covers up, re$0pair'], 'definition')).toEqual(['heron.yard:14: repair']);
  });

  test('counts as a use', () => {
    expect(places(['labour strip', 'labour st$0rip'], 'references')).toEqual(['heron.yard:7: strip', 'heron.yard:6: strip', 'heron.yard:13: strip', 'heron.yard:15: strip']);
    expect(places(['option repair', 'option re$0pair'], 'references')).toEqual(['heron.yard:14: repair', 'heron.yard:26: repair']);
  });

  test('a rename that would make after mean two things is refused', () => {
    const { service, uri, offset } = atCursor(TEXT.replace('part casting', 'part cas$0ting'));
    expect(service.rename(uri, offset, 'face', [])).toHaveProperty('refused');
  });
});

test('the outline shows chances, inspections and coverages with what they say of themselves', () => {
  const { service, uri } = atCursor(`$0${TEXT.trimStart()}`.replace('$0--- heron.yard\nsteelyard', '--- heron.yard\n$0steelyard'));
  const flat = (list: ReturnType<typeof service.symbols>, depth: number): string[] => list.flatMap(({ name, detail, kind, children }) => [`${'  '.repeat(depth)}${kind}: ${name}${detail === '' ? '' : `, ${detail}`}`, ...flat(children, depth + 1)]);
  expect(flat(service.symbols(uri), 0).filter((line) => /other|labour: Strip/.test(line))).toEqual([
    '  other: bench, 100.00', 'labour: Strip, 300.00', '  other: It is cracked, 12 %', '    other: Its guides are worn, 40 %', '  labour: Strip, 300.00', '  other: It leaks again, 3 %', 'other: Dye, 20.00', 'other: Look, 10.00', 'other: Plan, recall',
  ]);
});
