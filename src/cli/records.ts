import { jsonText } from '../report/index.js';
import { recordJson } from '../vocabulary/index.js';
import type { LanguageService } from '../service/index.js';
import type { Files } from './files.js';
import type { Terminal } from './terminal.js';

/** `steelyard records`: what an estimate and its shared files say, as data. True where all could be read. */
export function printRecords(uri: string, service: LanguageService, files: Files, terminal: Terminal): boolean {
  const { resolved, problems } = service.weighing(uri);
  const byFile = [...new Set(resolved.records.map((record) => record.block.uri))].map((file) => ({
    file: files.nameOf(file),
    records: resolved.records.filter((record) => record.block.uri === file).map(recordJson),
  }));
  terminal.out(jsonText(byFile));
  return !problems.some((one) => one.severity === 'error');
}
