import fc from 'fast-check';
import type { Estimate, Labour } from '../../src/estimate/index.js';
import { withNeeded } from '../../src/estimate/index.js';
import { oneFile, weighFresh } from '../weigh/decision/weighing.js';
import { Draw } from './random-draw.js';
import { hours } from './random-figures.js';
import { randomEstimate } from './random-estimate.js';

/** Whole, valid estimates with one or two stages in them, as texts. */
export const randomStaged: fc.Arbitrary<string> = fc
  // Once in many cases the work of a random estimate goes round in a circle, stage or not.
  .tuple(randomEstimate.filter((text) => weighFresh(oneFile(text)).sound), fc.noBias(fc.array(fc.nat({ max: 65_535 }), { minLength: 30, maxLength: 60 })))
  .map(([text, numbers]) => withStages(text, new Draw(numbers)));

function withStages(text: string, draw: Draw): string {
  const { estimate } = weighFresh(oneFile(text)).resolved;
  const stages = Array.from({ length: draw.chance(25) ? 2 : 1 }, (_, i) => stageText(`before-${i + 1}`, estimate, draw));
  return `${text}${stages.join('')}`;
}

function stageText(name: string, estimate: Estimate, draw: Draw): string {
  const { access, labour, parts, shop } = estimate;
  const jobs = draw.some(labour.filter(waitsForNothing), 60);
  const opens = new Set(draw.some(access, 35));
  const open = () => new Set([...opens].flatMap((way) => [way, ...way.includes]));
  // What a job takes is opened for it, where what is drawn does not reach it.
  for (const job of withNeeded(jobs)) {
    const [mode] = job.modes;
    if (mode !== undefined && !job.modes.some(({ with: ways }) => ways.every((way) => open().has(way)))) for (const way of mode.with) opens.add(way);
  }
  const destroys = draw.some(parts, 40);
  const rates = [...shop.rates.keys()];
  const lines = [
    `stage ${name} "Before ${name}"`,
    ...(jobs.length === 0 ? [] : [`  do ${jobs.map((job) => job.name).join(', ')}`]),
    ...(opens.size === 0 ? [] : [`  opens ${[...opens].map((way) => way.name).join(', ')}`]),
    ...(draw.chance(70) ? [`  put back ${hours(draw)}`] : []),
    ...(draw.chance(30) ? [`  class ${draw.pick(rates)}`] : []),
    ...(destroys.length === 0 ? [] : [`  destroys ${destroys.map((part) => part.name).join(', ')}`]),
  ];
  return `${lines.join('\n')}\n`;
}

/** A job that waits for work which only comes after the decision would go round in a circle; that has its message. */
function waitsForNothing(job: Labour): boolean {
  return withNeeded([job]).every(({ after, sublets }) => after.length === 0 && sublets.every((sublet) => sublet.after.length === 0));
}
