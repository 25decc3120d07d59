// `node src/tools/run.mjs test/editor/host/install.ts`: installs what the editor tests run on.
import { findChromium } from './chromium.js';
import { install } from './ensure-host.js';
import { installDir } from './paths.js';

const started = Date.now();
await install({ browser: true });
const seconds = ((Date.now() - started) / 1000).toFixed(0);
console.log(`Editor host ready in ${seconds} s: ${installDir}; browser: ${findChromium() ?? 'none'}`);
