import { createLanguageService } from '../service/index.js';
import { largeEstimate } from './bench/large-estimate.js';
for (const withHeader of [false, true]) {
let current = withHeader ? largeEstimate(10000).replace('vehicle "Bench', 'estimate "Bench"\n  start 2026-11-30\n  valid 14 d\nvehicle "Bench') : largeEstimate(10000);
const text = current;
const service = createLanguageService({ read: () => ({ text: current }), resolvePath: () => undefined });
const uri = '/b/l.yard';
service.allDiagnostics(uri);
const figure = text.indexOf(' h', text.indexOf('takes', text.indexOf('labour job-500 ')));
const ms: number[] = [];
for (let round = 0; round < 300; round++) {
  current = `${text.slice(0, figure - 1)}${round % 10}${text.slice(figure)}`;
  const s = performance.now(); service.allDiagnostics(uri); ms.push(performance.now() - s);
}
ms.sort((a, b) => a - b);
console.log(withHeader ? 'with checks' : 'without checks (no estimate line)', 'fastest', ms[0]?.toFixed(2), 'p10', ms[30]?.toFixed(2), 'median', ms[150]?.toFixed(2));
}
