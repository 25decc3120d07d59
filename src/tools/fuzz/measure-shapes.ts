// How long parsing, checking and totals of hostile texts take: `node src/tools/run.mjs src/tools/fuzz/measure-shapes.ts [SIZE [WORDS OF ITS NAME]]`.
// Milliseconds of the processor for a text of half of SIZE characters (a million) and for all of it, what clears the memory
// beside it included, and then what passes by the clock until all of it is answered.
import { deskOver, uriOf } from './over.js';
import { shapes } from './shapes.js';

const [size = '1000000', wanted = ''] = process.argv.slice(2);
for (const [name, shape] of Object.entries(shapes)) {
  if (!name.includes(wanted)) continue;
  const took = [Number(size) / 2, Number(size)].map((length) => {
    const text = shape(length);
    const started = process.cpuUsage();
    const clock = performance.now();
    const { service } = deskOver(new Map([['job.yard', text]]));
    service.allDiagnostics(uriOf('job.yard'));
    const passed = performance.now() - clock;
    const { user, system } = process.cpuUsage(started);
    return { used: (user + system) / 1000, passed };
  });
  const shown = [...took.map(({ used }) => used), took[1]?.passed ?? 0];
  console.log(`${name.padEnd(50)}${shown.map((ms) => ms.toFixed(0).padStart(8)).join('')}`);
}
