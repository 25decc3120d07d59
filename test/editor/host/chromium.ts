// Finds the Chromium that drives the editor. Nothing is downloaded by the test library itself: the browser is the
// machine's own, or Debian's.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { run } from './process.js';

const variable = 'STEELYARD_CHROMIUM';
const candidates = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** The browser to use. A path given by the user that doesn't exist is an error, not a reason to look elsewhere. */
export function findChromium(): string | undefined {
  const given = process.env[variable];
  if (given !== undefined && given !== '') {
    if (!existsSync(given)) throw new Error(`${variable} names ${given}, which does not exist.`);
    return given;
  }
  return candidates.find((file) => existsSync(file));
}

export function requireChromium(): string {
  const found = findChromium();
  if (found === undefined) throw new Error(howTo);
  return found;
}

const howTo =
  `No Chromium found (looked at ${candidates.join(', ')}). Install one, for example ` +
  `"sudo apt-get install chromium" on Debian, or set ${variable} to the path of a Chrome or Chromium, then run this again.`;

const onPath = (name: string): boolean =>
  (process.env['PATH'] ?? '').split(path.delimiter).some((dir) => existsSync(path.join(dir, name)));

export async function installChromium(): Promise<void> {
  if (process.getuid?.() !== 0 || !onPath('apt-get')) throw new Error(howTo);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  console.log('[browser] apt-get update');
  await run('apt-get', ['update', '-qq'], { env });
  console.log('[browser] apt-get install chromium');
  await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { env });
  requireChromium();
}
