import { code, fence } from './markdown.js';

/** The first two chapters: what the manual is, and the shape of a line. */
export function introChapters(): string {
  return [
    '# The estimate file, line by line',
    '<!-- Generated from src/vocabulary by src/tools/emit.ts. Change the vocabulary and run the tool; edits here are lost. -->',
    'This is the reference. It says what every line of a `.yard` file can say, how it is written, and what each message of the tool means. Every example here is run as a test.',
    '## How to read it',
    'Each kind of line has its section, named after its first word. The section says what the line is for, where it may stand, and, in a table, everything it can say: how it is written, what it is, and what it means. “Needed” tells what the line can’t do without; the rest you write when you know it. Figures and names in the tables are examples.',
    '## The shape of a line',
    fence('part head-bolts "Head bolts, tightened to yield" 8 at 5.85 new  # from the catalogue\n  arrives 2 d'),
    [
      `- The first word says what the line is: ${code('part')}.`,
      `- Then comes its short name, ${code('head-bolts')}, where it has one. Other lines use this name. A name is letters, digits and hyphens, and starts with a letter; capitals matter.`,
      '- Then its title, in double quotes: the words that people read. Write `\\"` for a quote inside a title.',
      `- Then what it says: figures, words of its own such as ${code('new')}, and facts that start with a word such as ${code('arrives')}. Their order does not matter.`,
      `- A fact with a word in front may also stand on a line of its own below, indented. One fact for each line keeps changes easy to see.`,
      `- What follows ${code('#')} is a comment for whoever reads the file; the tool passes over it. Inside a title ${code('#')} is an ordinary character.`,
    ].join('\n'),
    'Indent with two spaces for each step. A line belongs to the nearest line above it that starts further left. Empty lines mean nothing, and spaces between the pieces of a line can be as many as you like, so that columns line up.',
    'Small and capital letters differ: first words, units and names are written exactly as here. Lines may stand in any order; only `steelyard 1` is always first. A line that can’t be read to its end is marked, and counts only as far as it could be read, so its figures may be too low: the options that rest on it are called incomplete until it is mended. One whose first word nobody knows is left out with what stands below it. All other lines still count.',
  ].join('\n\n');
}
