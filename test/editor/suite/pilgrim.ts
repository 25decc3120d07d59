// The estimate that most sessions work on, and what is asked of it in several of them.
import assert from 'node:assert/strict';
import { goToLine, typeText } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import type { Case } from './cases.js';
import { problemsOf } from './driven.js';
import { moneyIn, whereIs } from './expected.js';
import { figure, openPanel, pageFrame, waitForText } from './panel.js';
import type { Workspace } from './workspace.js';

const estimate = 'pilgrim-v6.yard';
const LOW = '1150 / ';
const PRICE = `${LOW}1350 / 2100`;

/** The sample of the transverse V6 in a workspace, and what its figures should be. */
export async function pilgrimIn(editor: Editor, workspace: Workspace) {
  const text = await workspace.read(estimate);
  const shop = await workspace.read('shop.yard');
  const figuresOf = (own: string) => moneyIn({ [estimate]: own, 'shop.yard': shop }, estimate);
  const price = whereIs(text, PRICE);
  const today = figuresOf(text);
  return {
    estimate, text, today,
    /** Where the used engine's price stands. */
    price,
    /** The figures with another likely price of the used engine. */
    withPrice: (likely: string) => figuresOf(text.replace(PRICE, PRICE.replace('1350', likely))),
    /** Types over the likely price of the used engine. */
    retype: async (likely: string): Promise<void> => {
      await goToLine(editor, price.line, price.column + LOW.length);
      for (let i = 0; i < 4; i++) await editor.page.keyboard.press('Shift+ArrowRight');
      await typeText(editor, likely);
    },
    /** Opens the panel and waits until it shows the estimate as it is on disk. */
    isWeighed: async (): Promise<void> => {
      await openPanel(editor);
      await waitForText(await pageFrame(editor), figure('used.total'), (shown) => shown === today('used.total'));
    },
  };
}

/** The last case of a session. */
export const nothingFailed = (editor: Editor): Case => ({ name: 'nothing failed', run: () => Promise.resolve(assert.deepEqual(problemsOf(editor), [])) });
