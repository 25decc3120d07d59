/** The comparison as files for other tools and other people. */
export { comparisonCsv, csvColumns } from './comparison-csv.js';
export { comparisonHtml } from './comparison-html.js';
