import { describe, expect, test } from 'vitest';
import { limits } from '../../../src/language/index.js';
import { applyEdits } from '../../../src/service/format/format.js';
import { serviceOver, uriOf } from '../../support/fixture.js';

const uri = uriOf('e.yard');

/** The text formatted; `$0` marks the cursor behind a line end just typed, `$1…$2` a range. */
function formatted(marked: string): string {
  const cursor = marked.indexOf('$0');
  const [from, to] = [marked.indexOf('$1'), marked.indexOf('$2') - 2];
  const text = marked.replace(/\$[012]/g, '');
  const { service } = serviceOver({ 'e.yard': text });
  if (cursor >= 0) return applyEdits(text, service.formatOnType(uri, cursor));
  return applyEdits(text, from >= 0 ? service.format(uri, { start: from, end: to }) : service.format(uri));
}

describe('columns', () => {
  test('heads, names, titles and figures of neighbours', () => {
    expect(formatted(`steelyard  1
part pump "Coolant pump"   88.00 new arrives 1 d
part head-bolts   "Head bolts" 12 at 3.90   new arrives 12 d
labour pump "Pump"
      takes 10.5/11.0/14 h
      takes 5.5 / 6.0 / 8 h with lifted
      takes 5.5/6.0/10 h with out
      uses pump,head-bolts
access lifted "Lifted"
  remove 1 h
`)).toBe(`steelyard 1
part pump       "Coolant pump"  88.00 new       arrives 1 d
part head-bolts "Head bolts"    12 at 3.90 new  arrives 12 d
labour pump "Pump"
  takes  10.5 / 11.0 / 14 h
  takes   5.5 / 6.0 / 8 h   with lifted
  takes   5.5 / 6.0 / 10 h  with out
  uses   pump, head-bolts
access lifted "Lifted"
  remove 1 h
`);
  });

  test('comments behind neighbours in one column, those on their own with the line below', () => {
    expect(formatted(`steelyard 1
   # not indented here
vehicle "Van"# behind
       # about the worth
  worth 4000.00     # running
  built 2012-11 # as the plate says   
# at the edge
note "End"
`)).toBe(`steelyard 1
# not indented here
vehicle "Van"  # behind
  # about the worth
  worth  4000.00  # running
  built  2012-11  # as the plate says
# at the edge
note "End"
`);
  });

  test('chances, and what inspections find of them', () => {
    expect(formatted(`steelyard 1
labour strip "Strip"   3 h
   apart after   90 min
   chance cracked   "It is cracked" 12 %
       fit   casting
       chance guides "Its guides are worn"    40%
           send face
   chance "A stud breaks" 5%   comeback
       charge tow
inspect dye "Dye test" 20.00   0.6 h
  finds cracked 90%   wrongly 5%
  finds guides 60%
  class   bench
inspect look "Look" 5.00
  finds   wrongly 4%
coverage "Plan"   recall   built from 2012-06    years 2012,  2013
coverage chains "Chains" campaign
    built from    2012-06
    up   to 150000 mi
`)).toBe(`steelyard 1
labour strip "Strip"  3 h
  apart after  90 min
  chance       cracked "It is cracked"  12 %
    fit     casting
    chance  guides "Its guides are worn"  40%
      send face
  chance               "A stud breaks"   5% comeback
    charge tow
inspect dye "Dye test"  20.00 0.6 h
  finds  cracked 90%  wrongly 5%
  finds  guides  60%
  class  bench
inspect look "Look"  5.00
  finds wrongly 4%
coverage        "Plan"    recall  built from 2012-06  years 2012, 2013
coverage chains "Chains"  campaign
  built from  2012-06
  up to       150000 mi
`);
  });

  test('lines with lines below them still align with their neighbours, but not at the left edge', () => {
    expect(formatted(`steelyard 1
option a "A"
  part "Engine" 900.00 used
    core 100.00
  labour "Swap" 12 h
part x "X" 1 new
part long-name "X" 1 new
  arrives 1 d
part y "Y" 1 new
`)).toBe(`steelyard 1
option a "A"
  part    "Engine"  900.00 used
    core 100.00
  labour  "Swap"  12 h
part x         "X"  1 new
part long-name "X"  1 new
  arrives 1 d
part y "Y"  1 new
`);
  });

  test('tabs become two spaces, and spaces of blank lines go', () => {
    expect(formatted('steelyard 1\n \t \nvehicle "Van"\n\tworth\t4000.00\n\n')).toBe('steelyard 1\n\nvehicle "Van"\n  worth 4000.00\n\n');
  });

  test('a title keeps its inner spaces, a percent sign its place', () => {
    expect(formatted('steelyard 1\nshop   "A  b\tc"\n  tax state   5 % on parts\n  tax town "Town"  5%  on parts\n')).toBe('steelyard 1\nshop "A  b\tc"\n  tax state         5 %  on parts\n  tax town  "Town"  5%   on parts\n');
  });
});

describe('what stays', () => {
  test('line ends, a byte order mark, and a missing last line end', () => {
    expect(formatted('\ufeffsteelyard   1\r\nvehicle  "Van"\r\n   worth 1\r\n\r\n# end  ')).toBe('\ufeffsteelyard 1\r\nvehicle "Van"\r\n  worth 1\r\n\r\n# end');
    expect(formatted('steelyard   1\r')).toBe('steelyard 1\r');
    expect(formatted('')).toBe('');
  });

  test('a block with a fault; others are formatted, also beside it', () => {
    expect(formatted(`steelyard 1
part a "A"   1 new
part bb "B"   1,000 new
part ccc "C"   1 new
vehicle   "Van"
    worth   12 h
    built  2012-11
note   "End"
`)).toBe(`steelyard 1
part a "A"  1 new
part bb "B"   1,000 new
part ccc "C"  1 new
vehicle   "Van"
    worth   12 h
    built  2012-11
note "End"
`);
  });

  test('a fault that only the estimate knows, such as a name that nothing has, is no reason to stop', () => {
    expect(formatted('steelyard 1\noption a   "A"\n  do   nothing-there\n')).toBe('steelyard 1\noption a "A"\n  do nothing-there\n');
  });

  test('a run beside a line that is nearly too long', () => {
    const long = `part a "${'x'.repeat(limits.lineLength - 30)}"   1 new`;
    const text = `steelyard 1\n${long}\npart bcdefghijk-lmnopq "B"   1 new arrives 1 d\n`;
    expect(formatted(text)).toBe(text);
  });

  test('all of an estimate that is in columns already', () => {
    const text = 'steelyard 1\npart a  "A"   1.00 new\npart bb "Bb"  12.00 new\n';
    const { service } = serviceOver({ 'e.yard': formatted(text) });
    expect(service.format(uri)).toEqual([]);
    expect(service.format(uriOf('gone.yard'))).toEqual([]);
  });
});

describe('a range', () => {
  test('takes the lines that it touches, in the columns of their neighbours', () => {
    expect(formatted('steelyard  1\npart a "A"   1 new\npart bb$1 "B"$2   1 new\npart c "C"   1 new\n')).toBe('steelyard  1\npart a "A"   1 new\npart bb "B"  1 new\npart c "C"   1 new\n');
  });

  test('takes the whole block where indentation changes', () => {
    expect(formatted('steelyard  1\nvehicle  "Van"\n    wor$1th   1\n    built$2 2012-11\n    odometer   5 mi\nnote   "End"\n')).toBe('steelyard  1\nvehicle "Van"\n  worth     1\n  built     2012-11\n  odometer  5 mi\nnote   "End"\n');
  });
});

describe('on a line end', () => {
  test('the line above and its run are put into columns', () => {
    expect(formatted('steelyard  1\npart a "A"   1 new\npart bb "Bb" 1   new\n$0\nnote   "End"\n')).toBe('steelyard  1\npart a  "A"   1 new\npart bb "Bb"  1 new\n\nnote   "End"\n');
    expect(formatted('steelyard  1\r\nvehicle   "Van"\r\n  worth 1\r\n  odometer   5 mi\r\n  $0')).toBe('steelyard  1\r\nvehicle   "Van"\r\n  worth     1\r\n  odometer  5 mi\r\n  ');
  });

  test('the line with the cursor is left alone, and so is all else', () => {
    expect(formatted('steelyard 1\npart a   "A" 1 new\n$0part bb   "B"   1 new\n')).toBe('steelyard 1\npart a  "A"  1 new\npart bb   "B"   1 new\n');
    expect(formatted('steelyard   1\n\n$0')).toBe('steelyard   1\n\n');
    expect(formatted('steelyard   1$0')).toBe('steelyard   1');
    expect(formatted('$0steelyard   1')).toBe('steelyard   1');
  });

  test('nothing happens where the writer indents in another way, or where the block has a fault', () => {
    const tabs = 'steelyard 1\nvehicle "Van"\n\tworth   1\n\todometer 5 mi\n';
    expect(formatted(`${tabs}\t$0`)).toBe(`${tabs}\t`);
    const fault = 'steelyard 1\nvehicle "Van"\n  worth   1\n  odometer 5\n';
    expect(formatted(`${fault}  $0`)).toBe(`${fault}  `);
  });
});
