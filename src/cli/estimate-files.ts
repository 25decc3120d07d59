import { readdirSync } from 'node:fs';
import path from 'node:path';
import { statOf, whyUnreadable } from './read-whole.js';

/** Told of a folder that can’t be read, with the end of a sentence that starts with its name. */
export type TellUnread = (folder: string, why: string) => void;

/** Folders that hold no estimates of the shop's own. */
const PASSED_OVER = new Set(['node_modules']);

/**
 * The estimate files below a folder, or a file itself, in the order of their names. Links are not followed, so that
 * nothing goes round in a circle or leads out; hidden folders are passed over. A folder that can’t be read is told of, and
 * the others are gone through.
 */
export function* estimateFilesBelow(place: string, tell: TellUnread): Generator<string> {
  if (statOf(place)?.isDirectory() !== true) {
    yield place;
    return;
  }
  for (const entry of entriesOf(place, tell)) {
    const inside = path.join(place, entry.name);
    if (entry.isDirectory() && !entry.name.startsWith('.') && !PASSED_OVER.has(entry.name)) yield* estimateFilesBelow(inside, tell);
    else if (entry.isFile() && /\.yard$/i.test(entry.name)) yield inside;
  }
}

function entriesOf(folder: string, tell: TellUnread) {
  try {
    return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  } catch (error) {
    tell(folder, whyUnreadable(error));
    return [];
  }
}
