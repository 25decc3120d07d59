/** Texts of a size that a caller chooses, each with very much of one thing. They are what grows faster than a file, if anything does. */
export type Shape = (size: number) => string;

const lines = (size: number, make: (i: number) => string): string => {
  const made: string[] = [];
  for (let length = 0, i = 0; length < size; i++) {
    const line = make(i);
    made.push(line);
    length += line.length + 1;
  }
  return `${made.join('\n')}\n`;
};
const names = (size: number, lead: string) => lines(size, (i) => `${lead}${i}`).trim().split('\n');
const HEAD = 'steelyard 1\nshop "S"\n  currency USD\n  rate bench "Bench" 100.00 usual\n';
/** Lines of a list that stay below the longest line, 100 names each. */
const listOf = (lead: string, all: readonly string[]): string => Array.from({ length: Math.ceil(all.length / 100) }, (_, i) => `  ${lead} ${all.slice(i * 100, i * 100 + 100).join(', ')}`).join('\n');

export const shapes: Readonly<Record<string, Shape>> = {
  'one word': (size) => 'x'.repeat(size),
  'one number': (size) => `steelyard 1\nfee f "F" ${'9'.repeat(size)}\n`,
  'digits and commas on one line': (size) => '1,'.repeat(size / 2),
  'quotes': (size) => '"'.repeat(size),
  'back slashes in a title': (size) => `note "${'\\'.repeat(size)}`,
  'spaces': (size) => ' '.repeat(size),
  'empty lines': (size) => '\n'.repeat(size),
  'returns without line feeds': (size) => 'note "x"\r'.repeat(size / 9),
  'comments': (size) => lines(size, (i) => `# ${i}`),
  'one block of comments': (size) => `steelyard 1\nvehicle "V"\n${lines(size, (i) => `  # ${i}`)}`,
  'lines nobody knows': (size) => lines(size, (i) => `thing ${i}`),
  'facts nobody knows': (size) => `${HEAD}vehicle "V"\n${lines(size, (i) => `  thing ${i}`)}`,
  'open titles': (size) => `${HEAD}${lines(size, (i) => `part p${i} "Open 4.00 new`)}`,
  'a staircase': (size) => `${HEAD}${Array.from({ length: Math.floor(Math.sqrt(2 * size)) }, (_, i) => `${' '.repeat(i)}x`).join('\n')}`,
  'a staircase up and down': (size) => `${HEAD}${lines(size, (i) => `${'  '.repeat(i % 12)}option o${i} "O"`)}`,
  'tabs against spaces': (size) => `${HEAD}vehicle "V"\n${lines(size, (i) => (i % 2 === 0 ? '  note' : '\tnote'))}`,
  'lines as long as may be': (size) => lines(size, () => `note "${'x'.repeat(1_990)}"`),
  'names as long as may be': (size) => `${HEAD}${lines(size, (i) => `fee ${'n'.repeat(1_900)}${i} "F" 1.00`)}`,
  'one name given again and again': (size) => `${HEAD}${lines(size, (i) => `fee tow "F" ${i}.00`)}`,
  'names that nothing has': (size) => `${HEAD}option o "O"\n${listOf('do', names(size, 'job-'))}\n`,
  'names nearly right': (size) => `${HEAD}${lines(size / 2, (i) => `labour replace-the-pump-${i} "J" 1 h`)}option o "O"\n${listOf('do', names(size / 2, 'replace-tha-pump-'))}\n`,
  'one name in a list again and again': (size) => `${HEAD}labour j "J" 1 h\noption o "O"\n${listOf('do', Array.from({ length: size / 3 }, () => 'j'))}\n`,
  'parts of one option': (size) => `${HEAD}option o "O"\n${lines(size, (i) => `  part "P ${i}" 2 at ${i % 90}.50 new`)}`,
  'parts of one option, each in three figures': (size) => `${HEAD}option o "O"\n${lines(size, (i) => `  part "P ${i}" ${i % 90}.50 / 91.00 / 99.00 new`)}option p "P"\n  part "P" 1.00 new\n`,
  'parts of all options, each in three figures': (size) => `${HEAD}${Array.from({ length: 40 }, (_, o) => `option o${o} "O"\n${lines(size / 40, (i) => `  part "P ${i}" ${i % 90}.50 / 91.00 / 99.00 new`)}`).join('')}`,
  'jobs of all options, each in three figures': (size) => `${HEAD}${Array.from({ length: 40 }, (_, o) => `option o${o} "O"\n${lines(size / 40, (i) => `  labour "P ${i}" ${i % 9}.50 / 9.5 / 12 h`)}`).join('')}`,
  'the same jobs in all options': (size) => `${HEAD}${lines(size / 2, (i) => `labour j${i} "J" ${i % 9}.5 / 10 / 12 h`)}${Array.from({ length: 40 }, (_, o) => `option o${o} "O"\n${listOf('do', names(size / 80, 'j'))}\n`).join('')}`,
  'fees that one option charges': (size) => `${HEAD}${lines(size / 2, (i) => `fee f${i} "F" 1.00`)}option o "O"\n${listOf('charge', names(size / 3, 'f'))}\n  labour "J" 1 h\n`,
  'parts that one job uses': (size) => `${HEAD}${lines(size / 2, (i) => `part p${i} "P" 1.00 new`)}labour j "J" 1 h\n${listOf('uses', names(size / 3, 'p'))}\noption o "O" do j\n`,
  'parts of one way in': (size) => `${HEAD}access a "A" remove 1 h\n${lines(size, (i) => `  part "P ${i}" 1.00 new`)}labour j "J" 1 h with a\noption o "O" do j\n`,
  'parts of one chance': (size) => `${HEAD}option o "O"\n  part "P" 1.00 new\n  chance c "C" 5%\n${lines(size, (i) => `    part "P ${i}" 1.00 / 2.00 / 3.00 new`)}`,
  'ways that one job takes': (size) => `${HEAD}${lines(size / 2, (i) => `access a${i} "A" remove 1 h`)}labour j "J"\n${lines(size / 2, (i) => `  takes 1 h with a${i}`)}option o "O" do j\n`,
  'cores of one option': (size) => `${HEAD}option o "O"\n${lines(size, (i) => `  part "P ${i}" 1.00 used\n    core 5.00 due 30 d`)}`,
  'jobs of one option': (size) => `${HEAD}${lines(size / 2, (i) => `labour j${i} "J" ${i % 9}.5 h`)}option o "O"\n${listOf('do', names(size / 2, 'j'))}\n`,
  'jobs that wait for each other': (size) => `${HEAD}${lines(size / 2, (i) => `labour j${i} "J" 1 h${i === 0 ? '' : ` after j${i - 1}`}`)}option o "O"\n${listOf('do', names(size / 3, 'j'))}\n`,
  'jobs that wait for all before': (size) => `${HEAD}${Array.from({ length: Math.floor(Math.sqrt(size / 6)) }, (_, i) => `labour j${i} "J" 1 h\n${i === 0 ? '' : listOf('after', names(size, 'j').slice(0, i))}`).join('\n')}\noption o "O"\n${listOf('do', names(size, 'j').slice(0, Math.floor(Math.sqrt(size / 6))))}\n`,
  'ways in that include each other': (size) => `${HEAD}${lines(size, (i) => `access a${i} "A" ${i === 0 ? '' : `includes a${i - 1} `}remove 1 h`)}labour j "J" 1 h with a9\noption o "O" do j\n`,
  'ways in that include two each': (size) => `${HEAD}${lines(size, (i) => `access a${i} "A" ${i < 2 ? '' : `includes a${i - 1}, a${i - 2} `}remove 1 h`)}labour j "J" 1 h with a99\noption o "O" do j\n`,
  'ways in that include the next': (size) => `${HEAD}${lines(size, (i) => `access a${i} "A" includes a${i + 1} remove 1 h`)}labour j "J" 1 h with a0\noption o "O" do j\n`,
  'ways in that all include one': (size) => `${HEAD}access a "A" remove 1 h\n${lines(size, (i) => `access a${i} "A" includes a remove 1 h`)}labour j "J" 1 h with a0\noption o "O" do j\n`,
  'jobs that need the next': (size) => `${HEAD}${lines(size, (i) => `labour j${i} "J" 1 h needs j${i + 1}`)}option o "O" do j0\n`,
  'jobs that wait for the next': (size) => `${HEAD}${lines(size / 2, (i) => `labour j${i} "J" 1 h after j${i + 1}`)}option o "O"\n${listOf('do', names(size / 3, 'j'))}\n`,
  'jobs that need two each': (size) => `${HEAD}${lines(size, (i) => `labour j${i} "J" 1 h${i < 2 ? '' : ` needs j${i - 1}, j${i - 2}`}`)}option o "O" do j99\n`,
  'options': (size) => `${HEAD}labour j "J" 1 h\n${lines(size, (i) => `option o${i} "O" do j`)}`,
  'chances of one option': (size) => `${HEAD}option o "O"\n  part "P" 1.00 new\n${lines(size, (i) => `  chance c${i} "C" 5%\n    part "Q" 1.00 new`)}`,
  'chances below chances': (size) => `${HEAD}option o "O"\n${lines(size, (i) => `${'  '.repeat(1 + (i % 10))}chance c${i} "C" 5%`)}`,
  'findings': (size) => `${HEAD}${lines(size, (i) => `finding f${i} "Low" compression 120 118 40 121 psi`)}labour j "J" 1 h because f0\noption o "O" do j\n`,
  'readings of one finding': (size) => `${HEAD}finding f "F"\n${lines(size, () => `  compression ${'120 '.repeat(400)}psi`)}`,
  'taxes, fees and markups': (size) => `steelyard 1\nshop "S"\n  currency USD\n  rate bench "Bench" 100.00 usual\n${lines(size, (i) => `  tax t${i} "T" 1% on parts, labour\n  fee f${i} "F" 1% of labour\n  markup 10% to ${i + 1}.00`)}option o "O"\n  labour "J" 1 h\n  part "P" cost 3.00 new\n`,
  'rates': (size) => `steelyard 1\nshop "S"\n  currency USD\n${lines(size, (i) => `  rate r${i} "R" 100.00`)}`,
  'closed days': (size) => `steelyard 1\nshop "S"\n  currency USD\n  workday 8 h\n  rate bench "Bench" 100.00 usual\n${lines(size, (i) => `  closed 20${String(26 + (i % 60)).padStart(2, '0')}-0${1 + (i % 9)}-1${i % 9}`)}estimate "E" start 2026-11-30\noption o "O"\n  labour "J" 900 h\n`,
  'stages': (size) => `${HEAD}labour j "J" 1 h\n${lines(size, (i) => `stage s${i} "S" do j`)}option o "O" do j\n`,
  'inspections': (size) => `${HEAD}option o "O"\n  part "P" 1.00 new\n  chance c "C" 5%\n    part "Q" 1.00 new\n${lines(size, (i) => `inspect i${i} "I" 1.00 finds c 90% wrongly 1%`)}`,
  'coverages': (size) => `${HEAD}vehicle "V" built 2012-11\n${lines(size, (i) => `coverage c${i} "C" recall built from 2012-06 built to 2013-02`)}option o "O"\n  part "P" 1.00 new\n`,
  'authorisations': (size) => `${HEAD}option o "O"\n  part "P" 1.00 new\n${lines(size, (i) => `authorised o ${i}.00 on 2026-11-24`)}`,
  'things to allow': (size) => `${HEAD}${lines(size, (i) => `# allow no-tax: ${i}`)}option o "O"\n  part "P" 1.00 new\n`,
  'hidden characters': (size) => `${HEAD}${lines(size, () => 'note "a\u200bb"')}`,
  'look-alikes': (size) => lines(size, () => 'n\u043ete "Pump"'),
  'half pairs': (size) => `steelyard 1\nnote "${'\ud83d'.repeat(900)}"\n`.repeat(size / 920),
  'files used': (size) => `steelyard 1\n${lines(size, (i) => `use "f${i}.yard"`)}`,
};
