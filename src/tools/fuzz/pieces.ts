import { allKinds, units, type Field } from '../../vocabulary/index.js';

/** Every word that means something somewhere. */
export const WORDS: readonly string[] = [...new Set([
  ...allKinds.flatMap((kind) => [kind.word, ...kind.leads.keys(), ...Object.values(kind.fields).flatMap((field) => Object.keys((field as Field).value.words ?? {}))]),
  ...units.map(({ word }) => word),
])];

/** Numbers that somebody may type, and some that nobody should. */
export const FIGURES: readonly string[] = [
  '0', '0.0', '0.000001', '1', '2', '7.5', '12', '99.999999', '100', '100.000001', '999999999999', '999999999999.999999', '1000000000000', '0.0000001',
  '9'.repeat(400), `0.${'0'.repeat(400)}1`, '-1', '-0', '+1', '1e9', '1e999', '0x10', '1,000.00', '1.000,00', '.5', '5.', '1..2', '00012', '1/2', '1 / 2 / 3', '3 / 2 / 1', '0 / 0 / 0',
  '0 / 0 / 999999999999', '0.000001 / 0.000002 / 999999999999.999999', '50%', '0%', '100%', '999999999999%', '1 h', '999999999999 h', '0 h', '1 min', '1 d', '999999999999 d', '999999999999 mo', '0 d', '4000 wk', '$5', '5€', 'NAN', 'Infinity',
  '2026-11-30', '2026-02-30', '1800-01-01', '9999-12-31', '0000-00-00', '2012-11', '10000-01-01', '2024-02-29',
];

/** Marks and characters that are easily read wrong. */
export const ODD: readonly string[] = [
  '"', '\\', '\\"', '#', ',', '/', '%', ' ', '  ', '\t', '-', '.', '“', '”', '„', '\u00a0', '\u200b', '\u202e', '\u2066', '\ufeff', '\u0430', '🔧', '\ud800', '\udc00', '\0', '\r', '\u0007', '\u001b[31m', '\u0085', '\u2028', '\u2029', 'é', 'e\u0301', '€', '１', 'ﬁ', '漢字', 'עברית', '</td>', '<b>', '&amp;', '&#0;', '${1}', '%s', '$&', '=1+1', '__proto__', 'constructor', 'toString', 'hasOwnProperty',
];

export const ENDS: readonly string[] = ['\n', '\r\n', '\n  ', '\n    ', '\n\t', '\n \t', '\r', '\n\n'];
