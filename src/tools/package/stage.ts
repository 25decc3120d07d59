import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Contents } from './contents.js';

/** What is made for a package, and not copied. */
type Made = Readonly<Record<'manifest' | 'notices' | 'bill', string>>;

/**
 * Lays out a package in an empty folder. Modes are set, since those of a checkout depend on who made it, and they are
 * written into both kinds of package.
 */
export function stage({ files }: Contents, places: Readonly<Record<'repository' | 'built', string>>, made: Made, dir: string): void {
  for (const [target, source] of Object.entries(files)) {
    const content = source.from === 'made' ? made[source.what] : readFileSync(path.join(places[source.from], source.file));
    const full = path.join(dir, target);
    mkdirSync(path.dirname(full), { recursive: true });
    writeFileSync(full, content);
    chmodSync(full, target === 'dist/cli.js' ? 0o755 : 0o644);
  }
}
