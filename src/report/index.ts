/** Pure functions from results to text, tables, pages and data. Panel, quote and terminal share them. */
export { figureText, hoursText, moneyText, valueText } from './numbers.js';
export { figureNames, figureOf, lineId, linesOf, namedFigures, type FigureName } from './figures.js';
export { verdict } from './verdict.js';
export { explain, explainShort, howMade, type Explained, type Whereabouts } from './explain.js';
export { comparisonText, place, wayWords, type Emphasis } from './comparison-text.js';
export { weighJson, weighReport, type PlaceOf, type WeighReport } from './weigh-json.js';
export { checkReport, type CheckFinding, type CheckReport } from './check-json.js';
export { cautionLines, cautionTexts, estimateNotice } from './cautions.js';
export { plain } from './plain.js';
export { layOut, widthOf, wrap, type Row } from './table.js';
