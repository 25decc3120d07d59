// How long parsing, checking and totals of hostile texts take: `node src/tools/run.mjs src/tools/fuzz/measure-shapes.ts [SIZE [WORDS OF ITS NAME]]`.
// Milliseconds of the processor for a text of SIZE characters (a million) and of half that.
import { deskOver, uriOf } from './over.js';
import { shapes } from './shapes.js';

const [size = '1000000', wanted = ''] = process.argv.slice(2);
for (const [name, shape] of Object.entries(shapes)) {
  if (!name.includes(wanted)) continue;
  const took = [Number(size) / 2, Number(size)].map((length) => {
    const text = shape(length);
    const started = process.cpuUsage();
    const { service } = deskOver(new Map([['job.yard', text]]));
    service.allDiagnostics(uriOf('job.yard'));
    const { user, system } = process.cpuUsage(started);
    return (user + system) / 1000;
  });
  console.log(`${name.padEnd(40)}${took.map((ms) => ms.toFixed(0).padStart(8)).join('')}`);
}
