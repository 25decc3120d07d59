import type { Activity } from '../../../src/weigh/schedule/index.js';

/** A table as printed: id, predecessors, then one figure or three points. */
export function table(text: string): Activity[] {
  return text.trim().split(/\s*;\s*/).map((row) => {
    const [id, before, points] = row.split(/\s+/) as [string, string, string];
    const [low, likely = low, high = likely] = points.split('/').map(Number) as [number, number?, number?];
    return { id, after: before === '-' ? [] : before.split(','), duration: { low, likely, high } };
  });
}

export interface PublishedNetwork {
  readonly source: string;
  readonly activities: readonly Activity[];
  readonly path: string;
  readonly finish: number;
  readonly variance: number;
  /** A moment, and the exact chance to have finished by then. */
  readonly chance: readonly [moment: number, exact: number];
  /** Total slack of all activities that have some. */
  readonly slack: Readonly<Record<string, number>>;
}

export const PUBLISHED: readonly PublishedNetwork[] = [
  {
    // Read in a copy. The book prints .7123, from a rounded z.
    source: 'Heizer & Render, Operations Management, ch. 3, stadium case (read)',
    activities: table('A - 20/30/40; B A 20/65/80; C A 50/60/100; D C 30/50/100; E B 25/30/35; F E 0.1; G D,F 25/30/35; H G 10/20/30; I H 20/25/60; J H 8/10/12; K J 0.1; L I,K 20/25/60'),
    path: 'A C D G H I L', finish: 260, variance: 319.4444, chance: [270, 0.71209],
    // Computed by hand: 30 + 65 + 55 against 30 + 60 + 30 + 0.1, and 30 against 10 + 0.1.
    slack: { B: 29.9, E: 29.9, F: 29.9, J: 19.9, K: 19.9 },
  },
  {
    // Read; the links were drawn, and are taken to be 3 after 1, 4 after 2, 5 and 6 after 3 and 4, 7 after 5 and 6. The book prints .9633.
    source: 'Taylor, Introduction to Management Science, ch. 8 (read)',
    activities: table('1 - 5/8/17; 2 - 7/10/13; 3 1 3/5/7; 4 2 1/3/5; 5 3,4 4/6/8; 6 3,4 3/3/3; 7 5,6 3/4/5'),
    path: '1 3 5 7', finish: 24, variance: 5, chance: [28, 0.96318],
    slack: { 2: 1, 4: 1, 6: 3 },
  },
  {
    source: 'Hillier & Lieberman, Introduction to Operations Research, Reliable Construction (from memory, recomputed)',
    activities: table('A - 1/2/3; B A 2/3.5/8; C B 6/9/18; D C 4/5.5/10; E C 1/4.5/5; F E 4/4/10; G D 5/6.5/11; H E,G 5/8/17; I C 3/7.5/9; J F,I 3/9/9; K J 4/4/4; L J 1/5.5/7; M H 1/2/3; N K,L 5/5.5/9'),
    path: 'A B C E F J L N', finish: 44, variance: 9, chance: [47, 0.84134],
    slack: { D: 4, G: 4, H: 4, M: 4, I: 2, K: 1 },
  },
  {
    // The book prints 71.57 %, from a rounded z.
    source: 'Heizer & Render, Operations Management, ch. 3, paper mill example (from memory, recomputed)',
    activities: table('A - 1/2/3; B - 2/3/4; C A 1/2/3; D A,B 2/4/6; E C 1/4/7; F C 1/2/9; G D,E 3/4/11; H F,G 1/2/3'),
    path: 'A C E G H', finish: 15, variance: 28 / 9, chance: [16, 0.714625],
    slack: { B: 1, D: 1, F: 6 },
  },
  {
    // The book prints .13.
    source: 'Winston, Operations Research, 8.4, the two-product example (from memory, recomputed)',
    activities: table('A - 2/6/10; B - 5/9/13; C A,B 3/8/13; D A,B 1/7/13; E D 8/10/12; F C,E 9/12/15'),
    path: 'B D E F', finish: 38, variance: 65 / 9, chance: [35, 0.13214],
    slack: { A: 3, C: 9 },
  },
];
