import path from 'node:path';
import { checkSarif } from '../../src/cli/check-sarif.js';
import { foundIn } from '../../src/cli/found.js';
import type { ManyFiles } from '../../src/cli/files.js';
import { serviceOver, uriOf } from '../support/fixture.js';
import { sarifStandard, type Log } from './standard.js';

/** What `check --as sarif` says about files that are held in memory, the first of them asked for; validated. */
export function sarifOf(texts: Readonly<Record<string, string>>): Log {
  const { service, host } = serviceOver(texts);
  const files: ManyFiles = { host, open: uriOf, nameOf: (uri) => path.posix.basename(uri), forget: () => undefined };
  const { asked, found } = foundIn([Object.keys(texts)[0] as string], service, files);
  const fine = found.every(({ finding }) => finding.severity === 'advice');
  return sarifStandard.parse(JSON.parse(JSON.stringify(checkSarif(asked, found, { version: '1.2.3', fine }, (uri) => ({ identity: uri, path: path.posix.basename(uri), from: 'source-root' })))));
}
