import { jsonText, weighJson } from '../report/index.js';
import { comparisonCsv, comparisonHtml } from '../report/export/index.js';
import type { LanguageService } from '../service/index.js';
import { formFor, send } from './export-to.js';
import { InputError, type Files } from './files.js';
import { placesOf } from './positions.js';
import { sayWhatIsWrong } from './quote-wrong.js';
import type { Terminal } from './terminal.js';
import { todayOf } from './today.js';

export interface ExportOptions {
  readonly as: string | undefined;
  readonly output: string | undefined;
}

const ENDS = { html: ['html', 'htm'], csv: ['csv'], json: ['json'] } as const;

/** `steelyard export`: the comparison as a file for other tools and people. True where every option is whole. */
export function exportFile(name: string, { as, output }: ExportOptions, service: LanguageService, files: Files, terminal: Terminal): boolean {
  const form = formFor(as, output, ENDS);
  if (form === undefined) throw new InputError('export needs --as html, csv or json.');
  const uri = files.open(name);
  const decision = service.decision(uri);
  switch (form) {
    case 'html': send(comparisonHtml(decision), output, terminal); break;
    case 'csv': send(comparisonCsv(decision.comparison), output, terminal); break;
    case 'json': send(jsonText(weighJson(decision, placesOf(service, files), todayOf(terminal))), output, terminal); break;
  }
  return sayWhatIsWrong(name, uri, service, files, terminal);
}
