import path from 'node:path';
import { jsonText, plain, type CheckReport } from '../report/index.js';
import type { LanguageService } from '../service/index.js';
import { checkSarif } from './check-sarif.js';
import { formFor, send } from './export-to.js';
import { InputError, STDIN, type ManyFiles } from './files.js';
import { foundIn, type Found } from './found.js';
import { matchingFiles } from './matching-files.js';
import { statOf } from './read-whole.js';
import { sarifFilesBelow } from './source-root.js';
import { style, type Terminal } from './terminal.js';

export interface CheckOptions {
  readonly as: string | undefined;
  readonly output: string | undefined;
  readonly version: string;
}

const ENDS = { text: ['txt'], json: ['json'], sarif: ['sarif'] } as const;

/** `steelyard check`: what is wrong in some files, or those of folders, and in what they use. True where there is nothing to say. */
export function check(names: readonly string[], { as, output, version }: CheckOptions, service: LanguageService, files: ManyFiles, terminal: Terminal): boolean {
  const form = formFor(as, output, ENDS) ?? 'text';
  const passedOver: string[] = [];
  const seen = new Set<string>();
  const isFirst = (name: string) => seen.size < seen.add(name === STDIN ? name : path.resolve(terminal.cwd, name)).size;
  const tell = (folder: string, why: string) => void passedOver.push(`${files.nameOf(folder)} ${why}`);
  const all = names.flatMap((name) => (name === STDIN || isFile(path.resolve(terminal.cwd, name)) ? [name] : below(name))).filter(isFirst);
  const { asked, checked, found, unread } = foundIn(all, service, files);
  const left = [...passedOver, ...unread];
  // Where nothing could be read, there is nothing to report.
  if (asked.length === 0 && left.length > 0) throw new InputError(left.join('\n'));
  const report = reportOf(checked, found);
  const fine = report.errors + report.warnings === 0;
  switch (form) {
    case 'text': send(textOf(report, output === undefined ? terminal : { ...terminal, styled: false }).join(''), output, terminal); break;
    case 'json': send(jsonText(report), output, terminal); break;
    case 'sarif': send(jsonText(checkSarif(asked, found, { version, fine, unread: left.length > 0 }, sarifFilesBelow(terminal.cwd, files))), output, terminal); break;
  }
  if (left.length > 0) throw new InputError(`${left.join('\n')}\nAll else was checked.`);
  return fine;

  /** A folder without an estimate is a slip, such as a wrong folder: a green word over nothing would hide it. */
  function below(name: string): string[] {
    const before = passedOver.length;
    const estimates = [...matchingFiles(name, terminal.cwd, tell)].map(files.nameOf);
    if (estimates.length === 0 && passedOver.length === before) passedOver.push(`There is no estimate file (.yard) in ${plain(name)} or below it, so nothing was checked there. Name a file, a folder that holds some, or a pattern such as 'jobs/**/*.yard'.`);
    return estimates;
  }
}

function isFile(file: string): boolean {
  return statOf(file)?.isFile() === true;
}

function reportOf(names: readonly string[], found: readonly Found[]): CheckReport {
  const findings = found.map(({ finding }) => finding);
  const count = (severity: CheckReport['findings'][number]['severity']) => findings.filter((one) => one.severity === severity).length;
  return { steelyard: 1, report: 'check', files: [...names], errors: count('error'), warnings: count('warning'), advice: count('advice'), findings };
}

function textOf(report: CheckReport, terminal: Terminal): string[] {
  const lines = report.findings.map((one) =>
    `${plain(one.file)}:${one.place.line}:${one.place.column}  ${style(terminal, one.severity, one.severity)}  ${plain(one.what)} ${style(terminal, `[${one.code}]`, 'quiet')}\n    ${plain(one.why)}\n    ${plain(one.instead)}\n`);
  const counts = [plural(report.errors, 'error'), plural(report.warnings, 'warning'), ...(report.advice > 0 ? [`${report.advice} to look at`] : [])];
  return [...lines, `${plural(report.files.length, 'file')}: ${counts.join(', ')}\n`];
}

function plural(count: number, word: string): string {
  return `${count === 0 ? 'no' : count} ${word}${count === 1 ? '' : 's'}`;
}
