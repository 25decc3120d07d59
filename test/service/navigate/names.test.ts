import { describe, expect, test } from 'vitest';
import { uriOf } from '../../support/fixture.js';
import { atCursor, edited, said } from './cursor.js';

const SHARED = `
--- shop.yard
steelyard 1
shop "Corner Bay"
  rate bench 100.00
part coolant "Coolant" 11 L at 4.10 new
labour fill "Fill and bleed" 0.8 h
  uses coolant
`;
const HERON = `
--- heron.yard
steelyard 1
use "shop.yard"
part pump "Coolant pump" 88.00 new
labour pump "Pump: replace" 2 h
  uses pump, coolant
option repair "Replace the pump"
  do pump, fill
  fit coolant
`;

function places(fixture: string, which: 'definition' | 'references'): string[] {
  const { service, uri, offset, others, texts } = atCursor(fixture);
  return (which === 'definition' ? service.definition(uri, offset) : service.references(uri, offset, others)).map((place) => said(texts, place));
}

describe('definition', () => {
  test('is the line that gives the name, in whichever file', () => {
    expect(places(HERON.replace('fit coolant', 'fit cool$0ant') + SHARED, 'definition')).toEqual(['shop.yard:4: coolant']);
  });

  test('goes by the kind that the slot takes', () => {
    expect(places(HERON.replace('uses pump', 'uses p$0ump') + SHARED, 'definition')).toEqual(['heron.yard:3: pump']);
    expect(places(HERON.replace('do pump', 'do pump$0') + SHARED, 'definition')).toEqual(['heron.yard:4: pump']);
  });

  test('of a use line is the file, and of a fixed word there is none', () => {
    expect(places(HERON.replace('"shop.yard"', '"shop$0.yard"') + SHARED, 'definition')).toEqual(['shop.yard:1: ']);
    expect(places(HERON.replace('fit coolant', 'way in-$0car') + SHARED, 'definition')).toEqual([]);
  });

  test('of a name that nothing has, of a figure and of a missing file there is none', () => {
    expect(places(HERON.replace('fit coolant', 'fit cool$0') + SHARED, 'definition')).toEqual([]);
    expect(places(HERON.replace('88.00', '88$0.00') + SHARED, 'definition')).toEqual([]);
    expect(places(HERON.replace('"shop.yard"', '"sh$0ip.yard"') + SHARED, 'definition')).toEqual([]);
  });
});

describe('references', () => {
  const OTHER = `
--- tarn.yard
steelyard 1
use "shop.yard"
option flush "Flush"
  fit coolant
--- alone.yard
steelyard 1
part coolant "Own coolant" 3.00 new
option flush "Flush"
  fit coolant
`;
  test('go through the files that use the line, and only those', () => {
    const wanted = ['shop.yard:4: coolant', 'shop.yard:6: coolant', 'heron.yard:5: coolant', 'heron.yard:8: coolant', 'tarn.yard:4: coolant'];
    expect(places(HERON + SHARED.replace('part coolant', 'part c$0oolant') + OTHER, 'references').sort()).toEqual([...wanted].sort());
    expect(places(HERON.replace('fit coolant', 'fit $0coolant') + SHARED + OTHER, 'references').sort()).toEqual([...wanted].sort());
  });

  test('of a name that nothing has are the lines that wait for it', () => {
    expect(places(HERON.replace('fit coolant', 'fit hose$0, hose').replace('uses pump', 'uses hose') + SHARED, 'references')).toEqual(['heron.yard:5: hose', 'heron.yard:8: hose', 'heron.yard:8: hose']);
  });

  test('are highlighted within the file, the line that gives the name as such', () => {
    const { service, uri, offset, texts } = atCursor(HERON.replace('uses pump', 'uses $0pump') + SHARED);
    expect(service.highlights(uri, offset).map(({ range, gives }) => `${said(texts, { uri, range })}${gives ? ' gives' : ''}`)).toEqual(['heron.yard:3: pump gives', 'heron.yard:5: pump']);
  });
});

describe('links', () => {
  test('lead to used files that are there', () => {
    const { service, uri, texts } = atCursor(HERON.replace('part pump', 'use "gone.yard"\nuse "../out.yard"\npart $0pump') + SHARED);
    expect(service.links(uri).map((link) => [said(texts, { uri, range: link.range }), link.uri])).toEqual([['heron.yard:2: shop.yard', uriOf('shop.yard')]]);
  });
});

describe('rename', () => {
  const renamed = (fixture: string, name: string): Record<string, string> | string => {
    const { service, uri, offset, others, texts } = atCursor(fixture);
    const result = service.rename(uri, offset, name, others);
    return 'refused' in result ? (String(result.refused)) : edited(texts, result);
  };

  test('changes the line and all that name it, and nothing of another kind', () => {
    const after = renamed(HERON.replace('uses pump', 'uses pu$0mp') + SHARED, 'water-pump') as Record<string, string>;
    expect(after['heron.yard']).toContain('part water-pump "Coolant pump" 88.00 new\nlabour pump "Pump: replace" 2 h\n  uses water-pump, coolant\noption repair "Replace the pump"\n  do pump, fill\n');
  });

  test('goes across files', () => {
    const after = renamed(HERON.replace('fit coolant', 'fit coolant$0') + SHARED, 'mix') as Record<string, string>;
    expect(after['shop.yard']).toContain('part mix "Coolant" 11 L at 4.10 new\nlabour fill "Fill and bleed" 0.8 h\n  uses mix\n');
    expect(after['heron.yard']).toContain('uses pump, mix\n');
    expect(after['heron.yard']).toContain('  fit mix\n');
  });

  test('mends a second line of one name, whose uses mean the first', () => {
    const after = renamed(HERON.replace('labour pump', 'part $0pump "Other pump" 51.00 aftermarket\nlabour pump') + SHARED, 'other') as Record<string, string>;
    expect(after['heron.yard']).toContain('part pump "Coolant pump" 88.00 new\npart other "Other pump" 51.00 aftermarket\n');
    expect(after['heron.yard']).toContain('uses pump, coolant');
  });

  test('to the same name changes nothing', () => {
    const { service, uri, offset, others } = atCursor(HERON.replace('uses pump', 'uses pu$0mp') + SHARED);
    expect(service.rename(uri, offset, 'pump', others)).toEqual(new Map());
  });

  const refusals: readonly [string, string, string, string][] = [
    ['no letter first', HERON.replace('uses pump', 'uses $0pump'), '4-pump', 'A name starts with a letter.'],
    ['a space', HERON.replace('uses pump', 'uses $0pump'), 'water pump', 'A name has only letters, digits and hyphens.'],
    ['a letter beyond a to z', HERON.replace('uses pump', 'uses $0pump'), 'pümp', 'A name has only letters, digits and hyphens.'],
    ['a hyphen last', HERON.replace('uses pump', 'uses $0pump'), 'pump-', 'A name does not end with a hyphen.'],
    ['nothing', HERON.replace('uses pump', 'uses $0pump'), '', 'A name needs at least one letter.'],
    ['a very long name', HERON.replace('uses pump', 'uses $0pump'), 'p'.repeat(61), 'A name has at most 60 characters.'],
    ['a name taken in another file', HERON.replace('uses pump', 'uses $0pump'), 'coolant', 'There is already a part line called coolant in shop.yard.'],
    ['a fixed word for a way in', `${HERON.replace('fit coolant', 'way lif$0ted')}access lifted "Lifted"\n  remove 1 h\n`, 'in-car', 'in-car is a fixed word of estimates and can\'t be a name of an access line.'],
    ['the name of an outside job where either may stand', `${HERON.replace('uses pump', 'uses $0pump')}sublet machining "Machining" 90.00\n`, 'machining', 'There is a sublet line called machining, and a line in heron.yard that takes either could then mean both.'],
    ['a name that would catch a use of the other kind', `${HERON.replace('uses pump', 'uses machining, pump').replace('part pump', 'part pu$0mp')}sublet machining "Machining" 90.00\n`, 'machining', 'There is a sublet line called machining, and a line in heron.yard that takes either could then mean both.'],
    ['a name that a line waits for', HERON.replace('uses pump', 'uses hose, $0pump'), 'hose', 'A line in heron.yard names hose, which nothing has; it would come to mean this line.'],
    ['a line that can\'t be read', HERON.replace('uses pump,', 'uses $0pump,').replace('fit coolant', 'fit coolant\n  fit pump pump'), 'belt', 'A line in heron.yard can\'t be read and has the word pump; mend it first.'],
    ['a name that nothing has', HERON.replace('fit coolant', 'fit $0hose'), 'pipe', 'No line gives the name hose; correct it first.'],
    ['a fixed word', HERON.replace('fit coolant', 'way $0in-car'), 'out', 'in-car is a fixed word of estimates; no line gives it.'],
    ['no name', HERON.replace('88.00', '$088.00'), 'belt', 'There is no name here.'],
  ];
  test.each(refusals)('is refused for %s', (_, fixture, name, refused) => {
    expect(renamed(fixture + SHARED, name)).toBe(refused);
  });

  test('is refused where a file is not read yet', () => {
    const { service, uri, offset, host } = atCursor(HERON.replace('uses pump', 'uses $0pump') + SHARED);
    host.setUnread('shop.yard');
    expect(service.rename(uri, offset, 'belt', [])).toEqual({ refused: 'shop.yard is not read yet; it may use the name too.' });
  });

  test('is refused where a shared line means another line in another estimate', () => {
    const jobs = '--- jobs.yard\nsteelyard 1\nlabour swap "Swap" 2 h\n  uses pump\n';
    const estimate = (name: string, cursor: string) => `--- ${name}.yard\nsteelyard 1\nuse "jobs.yard"\npart ${cursor}pump "Pump of ${name}" 9.00 new\n`;
    expect(renamed(estimate('one', '$0') + jobs, 'belt')).toMatchObject({ 'jobs.yard': 'steelyard 1\nlabour swap "Swap" 2 h\n  uses belt\n' });
    expect(renamed(estimate('one', '$0') + jobs + estimate('two', ''), 'belt')).toBe('jobs.yard is shared, and in another estimate its pump means another line.');
  });

  test('is prepared with the name under the cursor, or with the reason', () => {
    const prepared = (fixture: string) => {
      const { service, uri, offset } = atCursor(fixture);
      return service.prepareRename(uri, offset);
    };
    expect(prepared(HERON.replace('uses pump', 'uses pump$0') + SHARED)).toMatchObject({ name: 'pump' });
    expect(prepared(HERON.replace('"Coolant pump"', '"Coolant $0pump"') + SHARED)).toEqual({ refused: 'There is no name here.' });
    expect(prepared(HERON.replace('fit coolant', 'way in-car$0') + SHARED)).toEqual({ refused: 'in-car is a fixed word of estimates; no line gives it.' });
  });
});
