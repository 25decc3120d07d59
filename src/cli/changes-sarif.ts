import path from 'node:path';
import { changesSarif, type SarifLog } from '../report/sarif/index.js';
import type { Changes } from '../weigh/changes/index.js';
import type { OpenSide } from './git/sides.js';
import { rangeAt } from './positions.js';
import { sarifFileInRepository, sarifFilesBelow } from './source-root.js';

/** What changed, as a SARIF log about the new version. */
export function sarifOf(changes: Changes, [before, after]: readonly [OpenSide, OpenSide], version: string, cwd: string): SarifLog {
  const { service, uri } = after.side;
  const fileOf = after.from === 'repository' ? sarifFileInRepository : sarifFilesBelow(cwd, after.files);
  const placeOf: Parameters<typeof changesSarif>[1]['placeOf'] = (span) => {
    const place = service.place(span);
    const tree = place === undefined ? undefined : service.tree(place.uri);
    return place === undefined || tree === undefined ? undefined : { file: fileOf(place.uri), ...rangeAt(tree.text, place.range) };
  };
  const whole = [before, after].every(({ side }) => side.service.weighing(side.uri).problems.every(({ severity }) => severity !== 'error'));
  return changesSarif(changes, { version, exitCode: whole ? 0 : 1, file: fileOf(uri), names: { before: nameOf(before), after: nameOf(after) }, placeOf });
}

/** A file that lies elsewhere on the machine is told by its name alone. */
function nameOf({ side: { name } }: OpenSide): string {
  return path.isAbsolute(name) ? path.basename(name) : name;
}
