// axe-core (https://github.com/dequelabs/axe-core), the library that checks pages against the success criteria of WCAG 2
// and its own best practices. It is put in by the debugger, which a page's policy does not hold off: the policy stays as
// it is.
import axe from 'axe-core';
import type { Frame, Page } from 'playwright-core';

export interface Found {
  readonly id: string;
  readonly help: string;
  /** Where, and what is wrong there. */
  readonly at: readonly string[];
}

export interface Checked {
  readonly violations: readonly Found[];
  /** What axe can't judge by itself. */
  readonly incomplete: readonly Found[];
  /** How many rules had something to look at and found it right. */
  readonly passes: number;
}

// Runs in the page, and is text because this project's types know no DOM.
const run = `(async () => {
  const { violations, incomplete, passes } = await axe.run(document, { iframes: false, resultTypes: ['violations', 'incomplete'] });
  const told = ({ id, help, nodes }) => ({ id, help, at: nodes.map(({ target, failureSummary, any }) => target.join(' ') + ': ' + (failureSummary ?? any.map(({ message }) => message).join('; ')).replace(/\\s+/g, ' ')) });
  return { violations: violations.map(told), incomplete: incomplete.map(told), passes: passes.length };
})()`;

export async function axeOn(page: Page | Frame): Promise<Checked> {
  if (!(await page.evaluate<boolean>('typeof axe === "object"'))) await page.evaluate(`${axe.source}; undefined`);
  return await page.evaluate<Checked>(run);
}
