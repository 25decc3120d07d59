// `npm run bench`: a 10,000-line estimate whole, after one keystroke and asked for completions, and 1,000 files with the
// memory they take, beside a general JSON and a general YAML language service on the same records in the same run; which
// rooms that time is spent in, and how it grows with the file; then all that an estimate of usual size is decided by, and
// what is asked of a workspace of many files. Prints; asserts nothing.
import { cpus } from 'node:os';
import { Editing } from './editing.js';
import { measureBeside } from './measure-beside.js';
import { measureDecision } from './measure-decision.js';
import { measureGrowth } from './measure-growth.js';
import { measureManyFiles } from './measure-many-files.js';
import { measureRooms } from './measure-rooms.js';

const LINES = 10_000;
const ROUNDS = 40;
const { text } = new Editing(LINES);

console.log(`${text.split('\n').length.toLocaleString('en')} lines, ${(text.length / 1024).toFixed(0)} KB; Node ${process.version}; ${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores\n`);
for (const line of measureRooms(LINES, ROUNDS)) console.log(line);
for (const line of await measureGrowth()) console.log(line);
for (const line of await measureDecision()) console.log(line);
for (const line of measureManyFiles()) console.log(line);
// Last: the others keep what they have read, and would slow down whatever comes after them.
for (const line of ['', ...await measureBeside(LINES)]) console.log(line);
