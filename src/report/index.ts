/** Pure functions from results to text, tables, pages and data. Panel, quote and terminal share them. */
export { figureText, hoursText, moneyText, valueText } from './numbers.js';
export { figureNames, figureOf, lineId, linesOf, namedFigures, taskId, type FigureName } from './figures.js';
export { verdict } from './verdict.js';
export { decisionVerdict } from './decision-verdict.js';
export { aboutText, certaintyWords, coveredSentence, criticalWords, flipSentence, inspectionSentence, shareText } from './decision-words.js';
export { explain, explainShort, howMade, type Explained, type Whereabouts } from './explain.js';
export { comparisonText, place, wayWords, type Emphasis } from './comparison-text.js';
export { weighJson } from './weigh-json.js';
export type { PlaceOf } from './json-writer.js';
export { weighReport, type WeighReport } from './weigh-schema.js';
export { checkReport, type CheckFinding, type CheckReport } from './check-json.js';
export { cautionLines, cautionTexts, estimateNotice } from './cautions.js';
export { plain } from './plain.js';
export { layOut, widthOf, wrap, type Row } from './table.js';
