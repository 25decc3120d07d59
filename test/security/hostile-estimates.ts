import { estimateWith, HOSTILE } from '../support/hostile.js';

/** What a place of the editor would make a link, an icon or a command of. Written from memory of its documentation. */
const FOR_EDITORS: readonly string[] = [
  '[press](command:workbench.action.quit)', '[press](https://example.invalid "x")', '](command:x)', '$(trash) gone', '\\$(law~spin)', '$(law) $(law)',
];

/** Characters that nobody sees and that a list of the usual ones may forget. */
const UNSEEN: readonly string[] = ['a\u009b31mb', 'a\u061cb', 'a\u115fb', 'a\u3164b', 'a\u{e0041}b', 'a\ufffbb', 'a\u00adb', 'a\u0085b\u2028c'];

const ALL_HOSTILE: readonly string[] = [...HOSTILE, ...FOR_EDITORS, ...UNSEEN];

/** Beyond the lines of `estimateWith`: what is authorised, done in stages and closed. */
export function wholeEstimate(textAt: (place: number) => string): string {
  let place = PLACES;
  const q = () => `"${textAt(place++).replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;
  return `${estimateWith(textAt)}stage apart ${q()}
  do job
  opens open
  put back 2 h
  destroys unit
quoted 900.00 for one on 2026-11-24
authorised 700.00 for one on 2026-11-25 by ${q()} phone
  version ${q()}
closed for one on 2026-12-09
  billed 950.00
  clocked job 2.5 h
  clocked ${q()} 1 h
  paid unit 390.00
  paid ${q()} 3.00
  note ${q()}
`;
}

/** Places for texts in `estimateWith`. */
const PLACES = [...estimateWith((at) => `place ${at}.`).matchAll(/place \d+\./g)].length;

/** So many estimates hold each text once; each text comes into another place with each turn. */
export const TURNS: readonly number[] = Array.from({ length: Math.ceil(ALL_HOSTILE.length / 16) }, (_, i) => i * 16);

export const textAt = (turn: number) => (place: number): string => ALL_HOSTILE[(place + turn) % ALL_HOSTILE.length] as string;
