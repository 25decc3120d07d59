import { plain } from '../report/index.js';
import type { LanguageService } from '../service/index.js';
import type { Files } from './files.js';
import type { Terminal } from './terminal.js';

/**
 * Says which shared files a text from standard input was weighed with: those of the disk, as they are now. The text may be
 * of another day, as in `git show REV:job.yard | steelyard weigh -`, and its prices may have been others then.
 */
export function sayBesideInput(uri: string, service: LanguageService, files: Files, terminal: Terminal): void {
  const used = service.uses(uri).filter((one) => files.host.read(one) !== 'missing').map((one) => plain(files.nameOf(one)));
  if (used.length === 0) return;
  terminal.err(`The text came in on standard input; what it uses was read from the disk as it is now: ${used.join(', ')}.\n`);
}
