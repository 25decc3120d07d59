import type { Diagnostic, LanguageService } from '../service/index.js';
import { plain, type CheckFinding, type CheckReport } from '../report/index.js';
import type { Files } from './files.js';
import { positionAt } from './positions.js';
import { style, type Terminal } from './terminal.js';

/** `steelyard check`: what is wrong in some files and in what they use. True where there is nothing to say. */
export function check(names: readonly string[], json: boolean, service: LanguageService, files: Files, terminal: Terminal): boolean {
  const found: Diagnostic[] = [];
  const seen = new Set<string>();
  for (const name of names) {
    for (const list of service.allDiagnostics(files.open(name)).values()) {
      for (const one of list) {
        const key = `${one.uri} ${one.range.start} ${one.range.end} ${one.code}`;
        if (!seen.has(key)) found.push(one);
        seen.add(key);
      }
    }
  }
  const report = reportOf(names, found, service, files);
  if (json) terminal.out(`${JSON.stringify(report, null, 2)}\n`);
  else for (const text of textOf(report, terminal)) terminal.out(text);
  return report.errors + report.warnings === 0;
}

function reportOf(names: readonly string[], found: readonly Diagnostic[], service: LanguageService, files: Files): CheckReport {
  const place = (uri: string, range: Diagnostic['range']): CheckFinding['place'] => {
    const text = service.tree(uri)?.text ?? '';
    const start = positionAt(text, range.start);
    const end = positionAt(text, range.end);
    return { line: start.line, column: start.column, endLine: end.line, endColumn: end.column };
  };
  const count = (severity: Diagnostic['severity']) => found.filter((one) => one.severity === severity).length;
  return {
    steelyard: 1,
    report: 'check',
    files: [...names],
    errors: count('error'),
    warnings: count('warning'),
    advice: count('advice'),
    findings: found.map((one) => ({
      file: files.nameOf(one.uri),
      place: place(one.uri, one.range),
      code: one.code,
      severity: one.severity,
      ...one.message,
      ...(one.fix === undefined ? {} : { fix: { title: one.fix.title, place: place(one.fix.place.uri, one.fix.place.range), text: one.fix.text } }),
    })),
  };
}

function textOf(report: CheckReport, terminal: Terminal): string[] {
  const lines = report.findings.map((one) =>
    `${one.file}:${one.place.line}:${one.place.column}  ${style(terminal, one.severity, one.severity)}  ${plain(one.what)} ${style(terminal, `[${one.code}]`, 'quiet')}\n    ${plain(one.why)}\n    ${plain(one.instead)}\n`);
  const counts = [plural(report.errors, 'error'), plural(report.warnings, 'warning'), ...(report.advice > 0 ? [`${report.advice} to look at`] : [])];
  return [...lines, `${plural(report.files.length, 'file')}: ${counts.join(', ')}\n`];
}

function plural(count: number, word: string): string {
  return `${count === 0 ? 'no' : count} ${word}${count === 1 ? '' : 's'}`;
}
