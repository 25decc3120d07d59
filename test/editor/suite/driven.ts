// What a shop writer does, with keyboard and mouse, in the real editor.
import assert from 'node:assert/strict';
import { cursorPosition, focusEditor, goToLine, openFile, runCommand, typeText } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { readHover, readProblems } from '../host/reading.js';
import { retry } from '../host/retry.js';
import type { Case } from './cases.js';
import { moneyIn, whereIs } from './expected.js';
import { figure, pageFrame, pressTitle, waitForLater, waitForText } from './panel.js';
import type { Workspace } from './workspace.js';

const estimate = 'pilgrim-v6.yard';

/** The story of one session; each case starts where the one before ended. */
export async function drivenCases(editor: Editor, workspace: Workspace): Promise<readonly Case[]> {
  const { page } = editor;
  const text = await workspace.read(estimate);
  const shop = await workspace.read('shop.yard');
  const price = whereIs(text, '1150 / 1350 / 2100');
  const today = moneyIn({ [estimate]: text, 'shop.yard': shop }, estimate);
  const undo = async (): Promise<void> => {
    await focusEditor(editor);
    await page.keyboard.press('Control+z');
  };
  /** Types over the likely price of the used engine. */
  const retype = async (likely: string): Promise<void> => {
    await goToLine(editor, price.line, price.column + '1150 / '.length);
    for (let i = 0; i < 4; i++) await page.keyboard.press('Shift+ArrowRight');
    await typeText(editor, likely);
  };

  return [
    {
      name: 'a wrong line is marked while it is typed',
      async run() {
        await goToLine(editor, 3);
        await typeText(editor, 'note 11h');
        const problems = await readProblems(editor, (found) => found.some(({ severity }) => severity === 'error'));
        const [wrong] = problems.filter(({ severity }) => severity === 'error');
        assert.equal(wrong?.line, 3);
        assert.equal(wrong.source, 'Steelyard');
        assert.match(wrong.code, /^[a-z]+(-[a-z]+)*$/);
        for (let i = 0; i < 8; i++) {
          await focusEditor(editor);
          await page.keyboard.press('Backspace');
        }
        await readProblems(editor, (found) => !found.some(({ severity }) => severity === 'error'));
      },
    },
    {
      name: 'the panel opens from the title, shows the figures, and leaves the keyboard in the text',
      async run() {
        await goToLine(editor, 1);
        await pressTitle(editor, 'Show comparison');
        const frame = await pageFrame(editor);
        for (const name of ['rebuild.total', 'used.total', 'exchange.total', 'as-it-stands.total', 'used.in-all', 'rebuild.penalty']) {
          await waitForText(frame, figure(name), (shown) => shown === today(name));
        }
        assert.equal(await page.locator('.editor-instance .monaco-editor.focused').count(), 1);
      },
    },
    {
      name: 'a new price is weighed as it is typed',
      async run() {
        await retype('1450');
        const changed = moneyIn({ [estimate]: text.replace('1150 / 1350 / 2100', '1150 / 1450 / 2100'), 'shop.yard': shop }, estimate);
        assert.notEqual(changed('used.total'), today('used.total'));
        await waitForText(await pageFrame(editor), figure('used.total'), (shown) => shown === changed('used.total'));
      },
    },
    {
      name: 'a broken line keeps the last good figures, and says so',
      async run() {
        await retype('1,45');
        const frame = await pageFrame(editor);
        const said = await waitForText(frame, '.broken', (shown) => shown.includes('last good figures'));
        assert.equal(said.replace(/\s+/g, ' '), `last good figures; line ${price.line} can’t be read`);
        const whole = moneyIn({ [estimate]: text.replace('1150 / 1350 / 2100', '1150 / 1450 / 2100'), 'shop.yard': shop }, estimate);
        assert.notEqual(await frame.locator(figure('used.total')).first().innerText(), '–');
        assert.equal(await frame.locator(figure('rebuild.total')).first().innerText(), whole('rebuild.total'));
        await editor.screenshot('last-good');
        await goToLine(editor, 1);
        await frame.locator('.broken button').click();
        await waitForLine(editor, price.line);
        await retype('1350');
        await retry('no mark', async () => ((await frame.locator('.broken').count()) === 0 ? true : undefined));
        await waitForText(frame, figure('used.total'), (shown) => shown === today('used.total'));
      },
    },
    {
      name: 'a figure leads to its line, by mouse and by keyboard',
      async run() {
        const frame = await pageFrame(editor);
        await frame.locator(figure('rebuild.outside')).first().click();
        await waitForLine(editor, whereIs(text, 'sublet head-work').line);
        await frame.locator('[data-key="lines"] details', { hasText: 'Fit a used engine' }).locator('summary').click();
        const line = frame.locator('details[open] tr[data-row]', { hasText: 'Used engine, 92 000 mi: core charge' });
        await line.locator('th button').focus();
        await page.keyboard.press('Enter');
        await waitForLine(editor, whereIs(text, 'core 150.00').line);
      },
    },
    {
      name: 'what helps to decide follows the figures: sure, flips, inspect first, coverage, calendar, months, margin',
      async run() {
        const frame = await pageFrame(editor);
        await waitForLater(frame);
        const keys = await frame.evaluate<string[]>(`[...document.querySelectorAll('[data-later] > section')].map((one) => one.dataset.key)`);
        assert.deepEqual(keys, ['sure', 'flips', 'inspect', 'coverage', 'calendar', 'months', 'shop']);
        assert.match(await frame.locator('[data-key="verdict"]').innerText(), /of 1000 cases/);
        assert.equal(await frame.locator('[data-key="shop"] table').isVisible(), false);
        // A sentence leads to its line, by mouse and by keyboard.
        await frame.locator('[data-key="flips"] button', { hasText: 'Used engine, 92 000 mi' }).click();
        await waitForLine(editor, price.line);
        await frame.locator('[data-key="inspect"] button').first().focus();
        await page.keyboard.press('Enter');
        await waitForLine(editor, whereIs(text, 'inspect at-supplier').line);
      },
    },
    {
      name: 'a figure is tried in the page: all moves but the file; then back, and written as one edit that undo takes back',
      async run() {
        const frame = await pageFrame(editor);
        const field = frame.locator('li', { hasText: 'Used engine, 92 000 mi' }).locator('[data-try]').first();
        const tried = moneyIn({ [estimate]: text.replace('1150 / 1350 / 2100', '1150 / 1500 / 2100'), 'shop.yard': shop }, estimate);
        const shows = async (of: typeof today): Promise<unknown> => await waitForText(frame, figure('used.total'), (shown) => shown === of('used.total'));
        await field.fill('1500');
        await shows(tried);
        await waitForLater(frame);
        assert.equal(await frame.evaluate<boolean>(`document.activeElement.dataset.try !== undefined`), true);
        assert.match(await frame.locator('.trying').innerText(), /You are trying: .*1500 instead of 1350/);
        await editor.screenshot('trying');
        await frame.locator('[data-act="back"]').click();
        assert.equal(await field.inputValue(), '1350');
        await shows(today);
        await waitForLater(frame);
        assert.equal(await field.inputValue(), '1350');
        await field.fill('1500');
        await shows(tried);
        await frame.locator('[data-act="write"]').click();
        await retry('no banner', async () => ((await frame.locator('.trials').count()) === 0 ? true : undefined));
        await shows(tried);
        await undo();
        await shows(today);
        await waitForLater(frame);
      },
    },
    {
      name: 'unfolded lists, their elements and the scroll stay while it is worked out anew',
      async run() {
        const frame = await pageFrame(editor);
        const plan = frame.locator('details[data-key="calendar exchange"]');
        await plan.locator('summary').click();
        await frame.evaluate(`window.before = [...document.querySelectorAll('details[data-key="calendar exchange"] button')]`);
        await frame.evaluate(`document.querySelector('[data-key="calendar"]').scrollIntoView()`);
        const top = await frame.evaluate<number>('document.scrollingElement.scrollTop');
        const before = await plan.innerText();
        await frame.evaluate(`window.arrived = []; addEventListener('message', ({ data }) => void window.arrived.push([data.kind, performance.now()]))`);
        const arrives = whereIs(text, 'arrives 6 d');
        await goToLine(editor, arrives.line, arrives.column + 'arrives '.length);
        await page.keyboard.press('Shift+ArrowRight');
        await typeText(editor, '8');
        await retry('the new calendar', async () => ((await plan.innerText()) === before ? undefined : true));
        await waitForLater(frame);
        // The figures are there first; what takes longer comes by itself.
        const arrived = await frame.evaluate<[kind: string, at: number][]>('window.arrived');
        assert.deepEqual(arrived.map(([kind]) => kind).filter((kind) => kind !== 'here').filter((kind, i, all) => kind !== all[i - 1]), ['show', 'later']);
        const at = (kind: string): number => arrived.find(([one]) => one === kind)?.[1] ?? 0;
        console.log(`      what helps to decide: ${(at('later') - at('show')).toFixed(0)} ms after the figures`);
        assert.equal(await plan.getAttribute('open'), '');
        assert.equal(await frame.evaluate<boolean>('window.before.length > 5 && window.before.every((one) => one.isConnected)'), true);
        assert.equal(await frame.evaluate<number>('document.scrollingElement.scrollTop'), top);
        await undo();
        await retry('the old calendar', async () => ((await plan.innerText()) === before ? true : undefined));
        await plan.locator('summary').click();
      },
    },
    {
      name: 'the line above an option opens the comparison at its figure; the keyboard stays in the text',
      async run() {
        const option = whereIs(text, 'option exchange');
        await goToLine(editor, option.line);
        // The editor asks for these lines anew a while after the last edit, and lets go of what the old ones would do.
        await page.waitForTimeout(1000);
        await page.locator('.codelens-decoration a', { hasText: today('exchange.total') }).click();
        const frame = await pageFrame(editor);
        const sought = await retry('the figure', async () => (await frame.evaluate<string | null>(`document.querySelector('.sought')?.dataset.figure ?? null`)) ?? undefined);
        assert.equal(sought, 'exchange.total');
        assert.equal(await page.locator('.editor-instance .monaco-editor.focused').count(), 1);
      },
    },
    {
      name: 'a hover shows what a line comes to',
      async run() {
        const pump = whereIs(text, 'labour pump');
        await goToLine(editor, pump.line, pump.column + 8);
        const line = /Coolant pump: replace: (\S+) for/.exec(await readHover(editor, (shown) => shown.includes('Coolant pump: replace:')))?.[1];
        assert.equal(line, today('used.line.pump'));
      },
    },
    {
      name: 'the page comes back as it was after it was hidden',
      async run() {
        const before = await pageFrame(editor);
        await before.locator('[data-key="calendar used"] summary').click();
        await before.locator('[data-key="lines"] details[open] summary').focus();
        await before.evaluate('document.scrollingElement.scrollTo(0, 300)');
        await page.waitForTimeout(100); // the page keeps its place once per frame
        await page.keyboard.press('Control+2');
        await openFile(editor, 'shop.yard');
        await runCommand(editor, 'View: Close Editor');
        const after = await pageFrame(editor);
        await waitForText(after, figure('used.total'), (shown) => shown === today('used.total'));
        await waitForLater(after);
        assert.equal(await after.locator('details[open]').count(), 2);
        await retry('the place in the page', async () => ((await after.evaluate('document.scrollingElement.scrollTop')) === 300 ? true : undefined));
      },
    },
    {
      name: 'a rate of the shop changes the comparison that uses it',
      async run() {
        await page.keyboard.press('Control+1');
        await openFile(editor, 'shop.yard');
        const rate = whereIs(shop, '132.00');
        await goToLine(editor, rate.line, rate.column);
        for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowRight');
        await typeText(editor, '140');
        const changed = moneyIn({ [estimate]: text, 'shop.yard': shop.replace('132.00', '140.00') }, estimate);
        await waitForText(await pageFrame(editor), figure('rebuild.total'), (shown) => shown === changed('rebuild.total'));
        await undo();
        await waitForText(await pageFrame(editor), figure('rebuild.total'), (shown) => shown === today('rebuild.total'));
      },
    },
    {
      name: 'nothing was refused by the page’s policy, and nothing failed',
      run: () => Promise.resolve(assert.deepEqual(problemsOf(editor), [])),
    },
  ];
}

export async function waitForLine(editor: Editor, line: number): Promise<void> {
  await retry(`the cursor on line ${line}`, async () => ((await cursorPosition(editor)).line === line ? true : undefined));
}

/** A save of the editor's own settings that takes longer than it likes, on a busy machine: not ours. */
const slowSave = /Aborted onWillSaveTextDocument-event after \d+ms/;

export function problemsOf(editor: Editor): readonly string[] {
  return editor.console.problems().map(({ text }) => text).filter((text) => !slowSave.test(text));
}
