// What the editor should show, worked out by the service itself over texts in memory.
import { createLanguageService, resolveWithin } from '../../../src/service/index.js';
import { moneyText, namedFigures } from '../../../src/report/index.js';

/** The likely values of named figures of an estimate made from these texts. */
export function moneyIn(texts: Readonly<Record<string, string>>, estimate: string): (figure: string) => string {
  const files = new Map(Object.entries(texts).map(([name, text]) => [`/${name}`, text]));
  const service = createLanguageService({
    read: (uri) => {
      const text = files.get(uri);
      return text === undefined ? 'missing' : { text };
    },
    resolvePath: (from, written) => resolveWithin('/', from, written),
  });
  const { comparison } = service.weighing(`/${estimate}`);
  const figures = namedFigures(comparison);
  return (name) => {
    const figure = figures.get(name);
    if (figure === undefined) throw new Error(`There is no figure ${name}.`);
    return moneyText(figure.likely, comparison.money);
  };
}

/** The line, from 1, and the column, from 1, of a piece of text that occurs once. */
export function whereIs(text: string, piece: string): { readonly line: number; readonly column: number } {
  const at = text.indexOf(piece);
  if (at < 0 || text.includes(piece, at + 1)) throw new Error(`“${piece}” does not occur once.`);
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: (before[before.length - 1] ?? '').length + 1 };
}
