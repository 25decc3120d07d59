import { ratioOf, type Job, type JobHistory } from '../weigh/index.js';
import type { Emphasis } from './comparison-text.js';
import type { History, LeftOut, PlacedCase } from './history.js';
import { plain } from './plain.js';
import { layOut, shortened, wrap, type Row } from './table.js';

const WIDTH = 96;
/** More far-off cases, or files left out, than this nobody looks at; the data has all of them. */
const MOST_SHOWN = 12;

/** The shop's book of times for people: one row a job, then what stands out. */
export function historyText(history: History, emphasis: Emphasis = (text) => text): string {
  const { jobs, leftOut } = history;
  const strong = (text: string) => emphasis(text, 'strong');
  const far = jobs.flatMap(({ farOff }) => farOff).sort((a, b) => Math.abs(Math.log(ratioOf(b))) - Math.abs(Math.log(ratioOf(a))));
  const [head = '', ...rows] = layOut([{ cells: HEADS }, ...jobs.map(jobRow)]);
  const sections: string[][] = [
    wrap(headSentence(history), WIDTH),
    jobs.length === 0 ? [] : [strong(head), ...rows],
    jobs.length === 0 ? [] : wrap('Hours: one case in ten was below low, one in ten above high. Of the estimate: the middle of what it took, divided by what was estimated; beside it the middle distance from that.', WIDTH),
    titled(strong('Slower or quicker over the years'), jobs.flatMap(trendSentence)),
    titled(strong('Far off the others'), [...far.slice(0, MOST_SHOWN).map(farOffSentence), ...beyond(far.length)]),
    titled(strong('Left out'), [...leftOut.slice(0, MOST_SHOWN).map(leftOutSentence), ...beyond(leftOut.length)]),
  ];
  return `${sections.filter((lines) => lines.length > 0).map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

const HEADS = ['', 'times', 'low', 'middle', 'high', 'of the estimate', 'spread'];

function headSentence({ jobs, files, closed, leftOut }: History): string {
  const cases = jobs.reduce((total, { count }) => total + count, 0);
  const read = `${amountOf(files, 'file')}, ${closed === 0 ? 'none' : closed === files ? 'all' : `${closed} of them`} closed`;
  const left = leftOut.length === 0 ? '' : `, ${leftOut.length} left out`;
  if (cases === 0) return `No clocked hours in ${read}${left}. Close an estimate with closed, and clocked lines below it.`;
  const few = jobs.filter((one) => one.few).length;
  return `The shop’s own book of times: ${amountOf(jobs.length, 'job')} clocked ${amountOf(cases, 'time')} in ${read}${left}.${few === 0 ? '' : ` Of ${few === 1 ? 'one job' : `${few} jobs`} there are few cases: a figure there says little.`}`;
}

function amountOf(count: number, word: string): string {
  return `${count.toLocaleString('en')} ${word}${count === 1 ? '' : 's'}`;
}

/** How a job is called in a sentence. */
function jobWords({ kind, title, ways }: Job): string {
  const way = kind === 'access' ? ': remove and refit' : ways.length === 0 ? '' : `, with ${ways.join(' and ')}`;
  return `${shortened(title)}${way}`;
}

function jobRow({ job, count, few, hours, ratio }: JobHistory): Row {
  const name = job.name === undefined ? '' : `${job.name}  `;
  return { cells: [`${name}${plain(jobWords(job))}`, `${few ? 'few: ' : ''}${count}`, ...[hours.low, hours.middle, hours.high].map(hoursShown), ratio === undefined ? '' : ratio.middle.toFixed(2), ratio === undefined || few ? '' : `± ${ratio.spread.toFixed(2)}`] };
}

/** Sampled hours: to a tenth, since nobody clocks finer; to a hundredth below one. */
export function hoursShown(hours: number): string {
  return hours.toFixed(hours < 1 ? 2 : 1);
}

function trendSentence({ job, trend }: JobHistory): string[] {
  if (trend === undefined) return [];
  const { hoursPerYear, from, to, count } = trend;
  return [`${plain(jobWords(job))}: ${Math.abs(hoursPerYear).toFixed(2)} h ${hoursPerYear > 0 ? 'more' : 'less'} with each year, by ${count} cases from ${from} to ${to}`];
}

function farOffSentence(one: PlacedCase): string {
  return `${plain(one.file)}:${one.line}: ${plain(jobWords(one.job))} took ${hoursShown(one.hours)} h, ${ratioOf(one).toFixed(2)} of the estimate`;
}

function leftOutSentence({ file, line, why }: LeftOut): string {
  return `${plain(file)}${line === undefined ? '' : `:${line}`}: ${plain(why)}`;
}

function beyond(count: number): string[] {
  return count > MOST_SHOWN ? [`and ${count - MOST_SHOWN} more; all of them with --json`] : [];
}

function titled(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [title, ...lines.flatMap((line) => wrap(line, WIDTH - 2).map((part, i) => `${i === 0 ? '  ' : '    '}${part}`))];
}
