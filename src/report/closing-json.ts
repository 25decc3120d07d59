import { percentOver, type ClosedLine, type ClosedPart, type Closing, type Comparison, type Figure } from '../weigh/index.js';
import type { ClosingReport } from './closing-schema.js';
import { closingSentences } from './closing-text.js';
import { writer, type JsonWriter, type PlaceOf } from './json-writer.js';

type JsonLine = ClosingReport['days'];
type JsonPart = ClosingReport['hours'];

/** A closing as plain data, in the form that `closingReport` describes. */
export function closingJson(closing: Closing, { estimate, money }: Comparison, placeOf: PlaceOf): ClosingReport {
  const write = writer(money, placeOf);
  const { closed, weighed: { option, complete }, otherWays } = closing;
  return {
    steelyard: 1,
    report: 'closing',
    title: estimate.header?.title ?? null,
    vehicle: estimate.vehicle?.title ?? null,
    currency: { code: money.currency.code === '' ? null : money.currency.code, digits: money.currency.digits },
    option: { name: option.name, title: option.title, complete },
    closed: closed.on ?? null,
    hours: partJson(closing.hours, write),
    paid: partJson(closing.paid, write),
    cores: partJson(closing.cores, write),
    days: lineJson(closing.days, write),
    billed: lineJson(closing.billed, write),
    authorised: closing.authorised === undefined ? null : authorisedJson(closing.authorised, write),
    authorisedElse: closing.authorisedElse?.name ?? null,
    otherWays: { taken: otherWays.taken.map(({ name }) => name), left: otherWays.left.map(({ name }) => name) },
    sentences: closingSentences(closing, money),
  };
}

function authorisedJson({ standing: { amount, over, room, beyond } }: NonNullable<Closing['authorised']>, write: JsonWriter): ClosingReport['authorised'] {
  const text = (figure: Figure) => write.points(figure).likely;
  return { amount: text(amount), over: text(over), room: text(room), aboveRoom: text(beyond) };
}

function partJson(part: ClosedPart, write: JsonWriter): JsonPart {
  const text = (figure: Figure) => write.points(figure).likely;
  const { lines, estimated, actual, over, beyond, open } = part;
  return { lines: lines.map((one) => lineJson(one, write)), estimated: text(estimated), actual: text(actual), over: text(over), percent: percentText(part), beyond: text(beyond), open: text(open) };
}

function lineJson(line: ClosedLine, { points, at }: JsonWriter): JsonLine {
  const text = (figure: Figure | undefined) => (figure === undefined ? null : points(figure).likely);
  const { title, name, with: ways, planned, estimated, actual, over } = line;
  return { title, ...(name === undefined ? {} : { name }), with: [...ways], planned, estimated: text(estimated), actual: text(actual), over: text(over), percent: percentText(line), ...at(line.at) };
}

function percentText(line: Parameters<typeof percentOver>[0]): string | null {
  return percentOver(line)?.toFixed(1) ?? null;
}
