import type { LanguageService } from '../service/index.js';
import type { Decision } from '../weigh/index.js';
import { closest } from '../vocabulary/index.js';
import { comparisonText, explain, jsonText, namedFigures, plain, weighJson } from '../report/index.js';
import { InputError, type Files } from './files.js';
import { placesOf } from './positions.js';
import { emphasisOf, style, type Terminal } from './terminal.js';
import { todayOf } from './today.js';

export interface WeighOptions {
  readonly json: boolean;
  readonly explain: string | undefined;
}

/** `steelyard weigh`: the options of an estimate side by side. True where every option is whole. */
export function weighFile(name: string, options: WeighOptions, service: LanguageService, files: Files, terminal: Terminal): boolean {
  const uri = files.open(name);
  const { problems } = service.weighing(uri);
  const decision = service.decision(uri);
  const placeOf = placesOf(service, files);
  const errors = problems.filter((one) => one.severity === 'error');

  if (options.explain !== undefined) explainFigure(options.explain, decision, placeOf, terminal);
  else if (options.json) terminal.out(jsonText(weighJson(decision, placeOf, todayOf(terminal))));
  else terminal.out(comparisonText(decision, emphasisOf(terminal), todayOf(terminal), terminal.width));

  if (errors.length > 0) {
    const first = errors[0];
    const place = first === undefined ? undefined : placeOf(first.at);
    const where = place === undefined ? '' : ` The first: ${plain(place.file)}:${place.line}: ${plain(first?.message.what ?? '')}`;
    terminal.err(`${errors.length === 1 ? 'One line' : `${errors.length} lines`} could not be read or priced, so totals may be too low.${where} See all with: steelyard check ${name}\n`);
  }
  return errors.length === 0;
}

function explainFigure(id: string, decision: Decision, placeOf: ReturnType<typeof placesOf>, terminal: Terminal): void {
  const named = namedFigures(decision.comparison, decision);
  const figure = named.get(id);
  if (figure === undefined) {
    const meant = closest(id, named.keys());
    throw new InputError(`There is no figure ${plain(id)}.${meant === undefined ? '' : ` Did you mean ${meant}?`} The figures: ${[...named.keys()].filter((key) => !/\.(?:line|task)\./.test(key)).join(', ')}, and OPTION.line.NAME, OPTION.line.1 and OPTION.task.1 for lines and pieces of the calendar.`);
  }
  const rows = explain(figure, decision.comparison.money, (span) => {
    const place = placeOf(span);
    return place === undefined ? undefined : `${place.file}:${place.line}`;
  });
  for (const row of rows) {
    const how = row.where === undefined ? row.how : row.how === 'as written' ? row.where : `${row.how}; ${row.where}`;
    terminal.out(`${'  '.repeat(row.depth)}${plain(row.text)}  ${style(terminal, plain(how), 'quiet')}\n`);
  }
}
