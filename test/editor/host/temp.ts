// Temporary folders that are gone after use, whichever way the process ends.
import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onProcessEnd } from './cleanup.js';

export interface TempFolder {
  readonly dir: string;
  remove(): Promise<void>;
}

// A server that is just ending may still write a file while its folder is removed.
const persistent = { recursive: true, force: true, maxRetries: 5, retryDelay: 100 } as const;

export function tempFolder(purpose: string): TempFolder {
  // The real path: macOS keeps its temp folder behind a link, and the editor compares paths as text.
  const dir = realpathSync(mkdtempSync(path.join(tmpdir(), `steelyard-${purpose}-`)));
  const forget = onProcessEnd(() => rmSync(dir, persistent));
  return {
    dir,
    async remove() {
      await rm(dir, persistent);
      forget();
    },
  };
}
