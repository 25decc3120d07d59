import { sarifLog, type SarifFinding } from '../../report/sarif/index.js';
import {
  checkReport, closingJson, closingReport, closingText, comparisonText, explain, historyJson, historyReport, historyText, listJson, listReport, listText, namedFigures, rowOf, weighJson, weighReport,
} from '../../report/index.js';
import { comparisonCsv, comparisonHtml } from '../../report/export/index.js';
import { comparisonPage, decisionPart, decisionTargets, decisionView, derivationsOf, keepLastGood, targetsOf } from '../../report/page/index.js';
import { quoteForm, quoteForms, quoteOf, type QuoteForm, sheetForm, stageQuoteOf, stageSheetOf, supplementOf, supplementSheetOf } from '../../report/quote/index.js';
import { sentence } from '../../language/index.js';
import { ruleByCode, type Diagnostic, type LanguageService } from '../../service/index.js';
import { rangeAt } from '../../cli/positions.js';
import { recordJson, type Record } from '../../vocabulary/index.js';
import { closingOf, historyOf, mayBeClosed, readClosed, type Decision } from '../../weigh/index.js';
import * as z from 'zod';
import { clean, finite, holds } from './claim.js';
import type { Input } from './input.js';
import { wellFormed } from './markup.js';
import { uriOf, type Desk } from './over.js';
import { placesIn } from './places.js';

const TODAY = '2026-11-30';
const forms = Object.keys(quoteForms) as QuoteForm[];

/** Data in the form that its schema describes: what the schemas refuse names the report. */
function fits(claim: string, schema: { readonly safeParse: (data: unknown) => { readonly error?: unknown } }, data: unknown): void {
  const text = JSON.stringify(data);
  const { error } = schema.safeParse(JSON.parse(text));
  holds(claim, error === undefined, () => String(error));
}

const schemas = { check: checkReport(), closing: closingReport(), history: historyReport(), list: listReport(), weigh: weighReport() };

/** What follows from the text alone, without a decision: the panel's first part, records, the list, the book, findings. */
export function passReports({ name, files }: Input, { service }: Desk): void {
  const uri = uriOf(name);
  const words = [...files.values()].join('\n');
  const { comparison, problems, resolved } = service.weighing(uri);
  const columns = keepLastGood([], { comparison, problems });
  const rows = ['.row.total', '.row.tax', '.row.days', ...columns.map(({ key }) => `${key}.line.1`)];
  const page = comparisonPage({ comparison, columns, lineOf: (span) => lineOf(service, span, uri), derivations: derivationsOf(columns, rows) });
  wellFormed('the comparison is well formed', page);
  clean('the comparison is words', page, words);
  targetsOf(columns, comparison.estimate);
  clean('the table for spreadsheets is words', comparisonCsv(comparison), words);
  for (const record of resolved.records) fitsItsKind(record);
  const row = rowOf({ comparison, problems }, TODAY);
  if (row !== undefined) {
    const listed = [{ file: uri, row }];
    clean('the list is words', listText(listed, []), words);
    fits('the list fits its schema', schemas.list, listJson(listed, [], TODAY));
  }
  stages(service, uri, words);
  closing(service, uri, words);
  findings(service, uri);
}

function lineOf(service: LanguageService, span: Parameters<LanguageService['place']>[0], uri: string): { readonly line: number; readonly file: string | undefined } | undefined {
  const place = placesIn(service)(span);
  return place === undefined ? undefined : { line: place.line, file: place.file === uri ? undefined : place.file };
}

function fitsItsKind(record: Record): void {
  const data = recordJson(record);
  if (!isWhole(record)) JSON.stringify(data);
  else fits(`a whole record fits the schema of its kind (${record.kind.word})`, record.kind.record(z), data);
}

function isWhole({ broken, children }: Record): boolean {
  return !broken && children.every(isWhole);
}

function stages(service: LanguageService, uri: string, words: string): void {
  const { comparison } = service.weighing(uri);
  for (const { stage } of comparison.stages) {
    const made = stageQuoteOf(comparison, stage.name, new Map());
    if (made.kind !== 'quote') continue;
    const sheet = stageSheetOf(made.quote);
    for (const form of forms) clean('the quote of a stage is words', sheetForm(sheet, form), words);
    wellFormed('the quote of a stage is well formed', sheetForm(sheet, 'html'));
  }
}

function closing(service: LanguageService, uri: string, words: string): void {
  const { comparison } = service.weighing(uri);
  const found = closingOf(comparison);
  if (found !== undefined) {
    clean('the closing is words', closingText(found, comparison), words);
    fits('the closing fits its schema', schemas.closing, closingJson(found, comparison, placesIn(service)));
  }
  const text = service.tree(uri)?.text ?? '';
  if (!mayBeClosed(text)) return;
  const { cases, wrong } = readClosed(uri, text, { treeOf: (file) => service.tree(file) ?? 'missing', resolvePath: (_, path) => uriOf(path) });
  const history = { jobs: historyOf(cases.map((one) => ({ ...one, file: uri }))), files: 1, closed: 1, leftOut: wrong === undefined ? [] : [{ file: uri, ...wrong }] };
  clean('the book of times is words', historyText(history), words);
  fits('the book of times fits its schema', schemas.history, historyJson(history));
}

function findings(service: LanguageService, uri: string): void {
  const all = [...service.allDiagnostics(uri)].flatMap(([file, list]) => list.map((one) => ({ one, text: service.tree(file)?.text ?? '' })));
  const data = all.map(({ one, text }) => {
    const fixAt = one.fix === undefined ? undefined : rangeAt(service.tree(one.fix.place.uri)?.text ?? '', one.fix.place.range);
    return { file: one.uri, place: rangeAt(text, one.range), code: one.code, severity: one.severity, ...one.message, ...(one.fix === undefined || fixAt === undefined ? {} : { fix: { title: one.fix.title, place: fixAt, text: one.fix.text } }) };
  });
  const count = (severity: Diagnostic['severity']) => data.filter((one) => one.severity === severity).length;
  fits('what is wrong fits its schema', schemas.check, { steelyard: 1, report: 'check', files: [uri], errors: count('error'), warnings: count('warning'), advice: count('advice'), findings: data });
  const fileOf = (file: string) => ({ identity: file, path: file.slice(1), from: 'source-root' as const });
  const told = all.map(({ one, text }): SarifFinding => ({ rule: one.code, severity: one.severity, text: sentence(one.message), at: { file: fileOf(one.uri), ...rangeAt(text, one.range) }, words: text.slice(one.range.start, one.range.end), related: [], fix: undefined }));
  const log = sarifLog({ version: '0', asked: [fileOf(uri)], findings: told, exitCode: 0, successful: true, rule: (id) => ({ id, title: ruleByCode.get(id)?.title ?? id, severity: 'warning', tags: [], manual: id, says: undefined, example: undefined }) });
  finite('the log for build servers holds numbers', log);
  // A region whose lines or columns begin below 1 is refused by readers. Source: SARIF 2.1.0 (OASIS), 3.30.5 and 3.30.6; numbers of sections from memory.
  for (const { place } of data) holds('a region has lines and columns from 1', place.line >= 1 && place.column >= 1 && (place.endLine > place.line || (place.endLine === place.line && place.endColumn >= place.column)), () => JSON.stringify(place));
}

/** What is made from a decision: some ten times as dear as all the rest. */
export function passDecision({ name, files }: Input, { service }: Desk): void {
  const uri = uriOf(name);
  const words = [...files.values()].join('\n');
  const decision = service.decision(uri);
  const report = weighJson(decision, placesIn(service), TODAY);
  finite('the report holds numbers', report);
  fits('the report fits its schema', schemas.weigh, report);
  const text = comparisonText(decision, undefined, TODAY);
  clean('the report is words', text, words);
  holds('the report tells a terminal nothing', !/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/.test(text), () => JSON.stringify(text));
  const { problems, resolved: { records } } = service.weighing(uri);
  const view = decisionView(decision, keepLastGood([], { comparison: decision.comparison, problems }));
  const page = decisionPart(view);
  wellFormed('the later part of the page is well formed', page);
  clean('the later part of the page is words', page, words);
  decisionTargets(view);
  const html = comparisonHtml(decision);
  wellFormed('the exported page is well formed', html);
  clean('the exported page is words', html, words);
  for (const [id, figure] of namedFigures(decision.comparison, decision)) clean('a figure explained is words', `${id} ${explain(figure, decision.comparison.money, () => undefined).map(({ text: shown, how }) => `${shown} ${how}`).join('\n')}`, words);
  quotes(decision, records, words);
}

function quotes(decision: Decision, records: readonly Record[], words: string): void {
  for (const { weighed: { option } } of decision.options) {
    const made = quoteOf(decision, option.name, new Map());
    if (made.kind === 'quote') {
      for (const form of forms) clean('a quote is words', quoteForm(made.quote, form), words);
      wellFormed('a quote is well formed', quoteForm(made.quote, 'html'));
    }
    const more = supplementOf(decision, option.name, { before: { comparison: decision.comparison, records }, records });
    if (more.kind === 'supplement') for (const form of forms) clean('a supplement is words', sheetForm(supplementSheetOf(more.supplement), form), words);
  }
}
