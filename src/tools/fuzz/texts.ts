import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

/** A text that inputs start from, and the files that stand beside it. */
export interface Start {
  readonly name: string;
  readonly text: string;
}

/** Longer texts are there to show limits, in one long row of the same; `grown` and the shapes make such. */
const LONGEST = 10_000;

/** Where texts to start from are kept. */
const FOLDERS = ['samples', 'test/corpus/ok', 'test/corpus/err', 'test/changes/pairs', 'test/history', 'test/closing', 'test/authorised', 'test/stage', 'test/list'] as const;

/** Samples, corpus and pairs of versions, by path from the root. Marks of the corpus stay in: they are noise like any other. */
export function startsBelow(root: string): readonly Start[] {
  return FOLDERS.flatMap((folder) => readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.yard(?:\.txt)?$/.test(file)).sort()
    .map((file) => ({ name: `${folder}/${file.split(path.sep).join('/')}`, text: readFileSync(path.join(root, folder, file), 'utf8') }))
    .filter(({ text }) => text.length <= LONGEST));
}
