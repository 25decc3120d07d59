/** What changed between two versions, as text, page and data. */
export { changesText } from './changes-text.js';
export { changesHtml, changesPart, changesTargets } from './changes-page.js';
export { changesJson } from './changes-json.js';
export { changesReport, type ChangesReport } from './changes-schema.js';
