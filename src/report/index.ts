/** Pure functions from results to text, tables, pages and data. Panel, quote and terminal share them. */
export { figureText, hoursText, moneyText, valueText } from './numbers.js';
export { figureNames, figureOf, lineId, linesOf, namedFigures, type FigureName } from './figures.js';
export { verdict } from './verdict.js';
export { explain, explainShort, howMade, type Explained, type Whereabouts } from './explain.js';
