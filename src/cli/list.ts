import { jsonText, listJson, listText, rowOf, wordsOf, type Listed, type Unread } from '../report/index.js';
import type { LanguageService } from '../service/index.js';
import type { ManyFiles } from './files.js';
import { matchingFiles } from './matching-files.js';
import { emphasisOf, type Terminal } from './terminal.js';
import { todayOf } from './today.js';

/**
 * `steelyard list`: the estimates of folders by state. True where all of them could be read. One bad file never stops
 * it; a file that is done is let go of.
 */
export function list(places: readonly string[], json: boolean, service: LanguageService, files: ManyFiles, terminal: Terminal): boolean {
  const today = todayOf(terminal);
  const listed: Listed[] = [];
  const unread: Unread[] = [];
  const seen = new Set<string>();
  for (const place of places.length === 0 ? ['.'] : places) {
    for (const uri of matchingFiles(place, terminal.cwd, (folder, why) => void unread.push({ file: files.nameOf(folder), why: `${files.nameOf(folder)} ${why}` }))) {
      if (seen.has(uri)) continue;
      seen.add(uri);
      const file = files.nameOf(uri);
      try {
        const row = rowOf(service.weighing(files.open(uri)), today);
        if (row !== undefined) listed.push({ file, row });
      } catch (error) {
        unread.push({ file, why: wordsOf(error) });
      }
      service.forget(uri);
      files.forget(uri);
    }
  }
  terminal.out(json ? jsonText(listJson(listed, unread, today)) : listText(listed, unread, emphasisOf(terminal)));
  return unread.length === 0 && listed.every(({ row }) => row.whole);
}
