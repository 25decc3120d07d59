import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

const folder = path.join(import.meta.dirname, '../../samples');

/** Every sample file: a new one is tested without being named here. */
export const samples: readonly { readonly file: string; readonly text: string }[] = readdirSync(folder)
  .filter((file) => file.endsWith('.yard'))
  .map((file) => ({ file, text: readFileSync(path.join(folder, file), 'utf8') }));
