import type { Emphasis } from '../report/index.js';

/** Where a command writes, and how. Tests put strings in its place. */
export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly cwd: string;
  readonly stdin: () => string;
  /** Whether the output may carry colour and weight. */
  readonly styled: boolean;
  /** The columns of the terminal that the output goes to; left out where it goes elsewhere, and everything stands as wide as it is. */
  readonly width?: number;
  /** The day (YYYY-MM-DD) that states and ages are told for; that of the clock where nothing is said. */
  readonly today?: string;
  /** Shows one line over and over, such as how far a long run is, or takes it away with an empty text. Only where the errors go to a terminal. */
  readonly progress?: (text: string) => void;
}

/** NO_COLOR in the environment, or output that is not a terminal, means plain text (the no-color convention). */
export function mayStyle(env: NodeJS.ProcessEnv, isTerminal: boolean): boolean {
  return isTerminal && (env['NO_COLOR'] ?? '') === '' && env['TERM'] !== 'dumb';
}

/** The columns to write for: what the user prefers goes before what the terminal says (COLUMNS; POSIX, XBD 8.3). */
export function columnsFor(env: NodeJS.ProcessEnv, isTerminal: boolean, columns: number | undefined): number | undefined {
  if (!isTerminal) return undefined;
  const preferred = /^0*[1-9]\d{0,5}$/.test(env['COLUMNS'] ?? '') ? Number(env['COLUMNS']) : undefined;
  // A terminal that doesn't know its size says 0.
  return preferred ?? (columns === 0 ? undefined : columns);
}

const codes = { strong: ['1', '22'], quiet: ['2', '22'], error: ['31', '39'], warning: ['33', '39'], advice: ['36', '39'] } as const;

export function style(terminal: Terminal, text: string, how: keyof typeof codes): string {
  const [on, off] = codes[how];
  return terminal.styled ? `\u001b[${on}m${text}\u001b[${off}m` : text;
}

export function emphasisOf(terminal: Terminal): Emphasis {
  return (text, how) => style(terminal, text, how);
}
