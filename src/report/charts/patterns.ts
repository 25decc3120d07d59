import { html, type Html } from '../page/html.js';
import { bar, idIn, type Frame } from './frame.js';

/** What fills a shape beside its colour, so that no two are told apart by colour alone. */
export type Pattern = 'rising' | 'falling' | 'fine' | 'dots' | 'upright' | 'level' | 'grid';

const TILES: Readonly<Record<Pattern, { readonly size: number; readonly path: string }>> = {
  rising: { size: 6, path: 'M-1.5 1.5L1.5-1.5M0 6L6 0M4.5 7.5L7.5 4.5' },
  falling: { size: 6, path: 'M-1.5 4.5L1.5 7.5M0 0L6 6M4.5-1.5L7.5 1.5' },
  fine: { size: 3.5, path: 'M-1 1L1-1M0 3.5L3.5 0M2.5 4.5L4.5 2.5' },
  dots: { size: 5, path: 'M1.2 1.2h.01M3.7 3.7h.01' },
  upright: { size: 4, path: 'M2 0V4' },
  level: { size: 4, path: 'M0 2H4' },
  grid: { size: 5, path: 'M2.5 0V5M0 2.5H5' },
};

/** The patterns that a chart uses. */
export function patterns(frame: Frame, used: readonly Pattern[]): Html {
  return html`<defs>${used.map((name) => {
    const { size, path } = TILES[name];
    return html`<pattern id="${idIn(frame, name)}" width="${size}" height="${size}" patternUnits="userSpaceOnUse"><path class="pattern ${name}" d="${path}"/></pattern>`;
  })}</defs>`;
}

/** How a shape is filled: the name of its colour, and a pattern unless it is the one that is solid. */
export interface Fill {
  readonly look: string;
  readonly pattern: Pattern | undefined;
}

/** A bar with its pattern over it. */
export function filled(frame: Frame, from: number, to: number, y: number, height: number, { look, pattern }: Fill): Html {
  const shape = bar(from, to, y, height, `fill ${look}`);
  return pattern === undefined ? shape : html`${shape}${bar(from, to, y, height, `over ${look}`, idIn(frame, pattern))}`;
}
