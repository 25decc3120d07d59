import { expect } from 'vitest';

/** Whether the quoted lines stand in an output: together, in order, with … for what is left out. */
export function expectQuoted(quote: string, output: string): void {
  let from = 0;
  for (const piece of quote.split(/^…\n/m)) {
    const at = `\n${output}`.indexOf(`\n${piece}`, from);
    expect(at, `${piece}\nshould stand in\n${output.slice(0, 3000)}`).toBeGreaterThanOrEqual(0);
    from = at + piece.length;
  }
}
