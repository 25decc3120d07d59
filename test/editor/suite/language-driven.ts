// Writing an estimate by keyboard, and the pictures of what then stands beside the text.
import { cursorPosition, focusEditor, goToLine, openFile, runCommand, typeText } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { patience, retry } from '../host/retry.js';
import type { Case } from './cases.js';
import { moneyIn } from './expected.js';
import { acceptFix, acceptSuggestion, goTo, linesShown, renameAtCursor, waitForShown } from './language-keys.js';
import { pageFrame } from './panel.js';
import { nothingFailed } from './pilgrim.js';
import { chooseTheme } from './themed.js';
import type { Workspace } from './workspace.js';

const NAME = 'heron-pump.yard';

/** The story of one session; each case leaves the text as it was. */
export async function languageDrivenCases(editor: Editor, workspace: Workspace): Promise<readonly Case[]> {
  const { page } = editor;
  const [heron, shop] = [await workspace.read(NAME), await workspace.read('shop.yard')];
  const money = moneyIn({ [NAME]: heron, 'shop.yard': shop }, NAME);
  const key = async (...keys: string[]): Promise<void> => {
    await focusEditor(editor);
    for (const one of keys) await page.keyboard.press(one);
  };
  /** Back to the text on disk; the cases write nothing but what a rename saves. */
  const revert = () => runCommand(editor, 'File: Revert File');

  return [
    {
      name: 'amounts and totals stand beside the text, light and dark',
      async run() {
        await openFile(editor, NAME);
        for (const theme of ['light', 'dark'] as const) {
          await chooseTheme(editor, theme);
          await goTo(editor, heron, '|access engine-lifted');
          await waitForShown(editor, /^ +remove .* h.*132\.00/);
          await editor.screenshot(`language-${theme}`);
          await goToLine(editor, heron.split('\n').length);
          await page.locator('.codelens-decoration', { hasText: money('lifted.total') }).waitFor({ timeout: patience });
          await editor.screenshot(`language-${theme}-options`);
        }
      },
    },
    {
      name: 'a line is completed by typing and taking a suggestion',
      async run() {
        await goTo(editor, heron, 'uses pump, belt, coolant|');
        await typeText(editor, ', oil');
        await acceptSuggestion(editor, 'oil-filter');
        await waitForShown(editor, /uses +pump, belt, coolant, oil-filter/);
        await editor.screenshot('language-completed');
        await revert();
      },
    },
    {
      name: 'the first line, a day and a line of the closing are taken from the list, and Enter leaves them whole',
      async run() {
        const today = new Date();
        const iso = [today.getFullYear(), today.getMonth() + 1, today.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
        await workspace.write('taken.yard', '');
        await openFile(editor, 'taken.yard');
        await typeText(editor, 'ste');
        await acceptSuggestion(editor, 'steelyard');
        await key('Enter');
        await page.keyboard.type('estimate "E-3', { delay: 60 });
        await key('End', 'Enter');
        await page.keyboard.type('written ', { delay: 60 });
        await acceptSuggestion(editor, 'today');
        await key('Enter');
        await retry('the lines as they were taken', async () => {
          const lines = (await linesShown(editor)).map((line) => line.trim().replace(/ +/g, ' '));
          return lines[0] === 'steelyard 1' && lines[1]?.startsWith('estimate "E-3"') === true && lines[2]?.startsWith(`written ${iso}`) === true ? true : undefined;
        });
        await revert();
        await workspace.write('filled.yard', 'steelyard 1\noption fix "Fix"\n  worth 900.00\n  \n');
        await openFile(editor, 'filled.yard');
        await goToLine(editor, 4, 3);
        await typeText(editor, 'las');
        await acceptSuggestion(editor, 'lasts');
        await waitForShown(editor, /lasts +36 mo/);
        // The figure is what is typed over; its unit stays with it, whichever key comes next.
        await page.keyboard.type('24', { delay: 60 });
        await key('Enter', 'Enter');
        await page.keyboard.type('resale 700.00', { delay: 60 });
        await retry('the figure with its unit', async () => {
          const lines = (await linesShown(editor)).map((line) => line.trim().replace(/ +/g, ' '));
          return lines[3]?.startsWith('lasts 24 mo') === true && lines[4]?.startsWith('resale 700.00') === true ? true : undefined;
        });
        await revert();
        await workspace.write('closing.yard', 'steelyard 1\nlabour head "Head" 7 h\noption fix "Fix"\n  do head\n  labour "Clean the pan" 0.5 h\nclosed for fix on 2026-11-20\n  \n');
        await openFile(editor, 'closing.yard');
        await goToLine(editor, 7, 3);
        await typeText(editor, 'clocked ');
        await acceptSuggestion(editor, 'Clean the pan');
        await waitForShown(editor, /clocked +"Clean the pan"/);
        await revert();
        await openFile(editor, NAME);
      },
    },
    {
      name: 'Enter ends a line that is complete, however quickly the next one is typed',
      async run() {
        const written = ['estimate "E-2  Van"', 'valid 14 d', 'answer 1 d', 'access up "Engine up"', 'caution lifting', 'remove 2 h', 'refit 3 h'];
        await workspace.write('typed.yard', 'steelyard 1\n');
        await openFile(editor, 'typed.yard');
        await goToLine(editor, 2);
        await focusEditor(editor);
        for (const [at, line] of written.entries()) {
          if (at > 0) await page.keyboard.press('Enter');
          if (line.startsWith('access')) await page.keyboard.press('Shift+Tab');
          await page.keyboard.type(line, { delay: 60 });
          // The list of what may come next is there by then, as it is for somebody who stops to think.
          await new Promise((done) => setTimeout(done, 400));
        }
        await retry('the lines as they were typed', async () => {
          const lines = (await linesShown(editor)).map((line) => line.trim()).filter((line) => line !== '').slice(1);
          return lines.length === written.length && written.every((line, i) => lines[i]?.startsWith(line) === true) ? true : undefined;
        });
        await runCommand(editor, 'File: Revert File');
        await openFile(editor, NAME);
      },
    },
    {
      name: 'a fix is taken with the keyboard',
      async run() {
        await goTo(editor, heron, 'takes 10.5 / 11.0 / 14| h');
        await key('Delete');
        await waitForShown(editor, /14h/);
        await acceptFix(editor, 'Write 14 h');
        await waitForShown(editor, /10\.5 \/ 11\.0 \/ 14 h/);
        await revert();
      },
    },
    {
      name: 'a shared file that is missing is made by a fix',
      async run() {
        await goTo(editor, heron, 'use "|shop.yard"');
        await typeText(editor, 'our-');
        await goTo(editor, heron, 'use "|shop.yard"');
        await acceptFix(editor, 'Create our-shop.yard with a shop to fill in');
        await retry('the file', async () => ((await workspace.read('our-shop.yard')).startsWith('steelyard 1\n') ? true : undefined));
        await openFile(editor, NAME);
        await revert();
      },
    },
    {
      name: 'a name is changed over two files, and back',
      async run() {
        await goTo(editor, heron, 'do pump, road-|test\n way in-car');
        await renameAtCursor(editor, 'try-out');
        await waitForShown(editor, /do +pump, try-out/);
        await retry('the new name in the shop’s file', async () => ((await workspace.read('shop.yard')).includes('labour try-out') ? true : undefined));
        await goTo(editor, heron, 'do pump, road-|test\n way in-car');
        await renameAtCursor(editor, 'road-test');
        await waitForShown(editor, /do +pump, road-test/);
        await retry('the old bytes', async () => ((await workspace.read('shop.yard')) === shop ? true : undefined));
        await runCommand(editor, 'File: Save All Files').catch(() => key('Control+s'));
        await retry('the old bytes', async () => ((await workspace.read(NAME)) === heron ? true : undefined));
      },
    },
    {
      name: 'the file is put into columns',
      async run() {
        await goTo(editor, heron, 'part belt "Drive belt"|');
        await typeText(editor, '      ');
        await runCommand(editor, 'Format Document');
        const line = heron.split('\n').find((one) => one.startsWith('part belt')) as string;
        await retry('the columns', async () => ((await linesShown(editor)).some((one) => one.startsWith(line)) ? true : undefined));
        await revert();
      },
    },
    {
      name: 'lines fold and unfold',
      async run() {
        await goTo(editor, heron, 'access |engine-out');
        await waitForShown(editor, /Wheel alignment/);
        await key('Control+Shift+BracketLeft');
        await retry('the lines folded away', async () => ((await linesShown(editor)).some((line) => line.includes('Wheel alignment')) ? undefined : true));
        await key('Control+Shift+BracketRight');
        await waitForShown(editor, /Wheel alignment/);
      },
    },
    {
      name: 'the totals that a line comes into are listed, and lead to the comparison',
      async run() {
        await goTo(editor, heron, 'labour |pump');
        await runCommand(editor, 'Steelyard: Show totals that use this line');
        const entry = page.locator('.quick-input-widget .monaco-list-row', { hasText: `Pump, engine raised off one mount: ${money('lifted.line.pump')}` });
        await entry.first().waitFor({ timeout: patience });
        await editor.screenshot('language-totals');
        await page.keyboard.press('Enter');
        await (await pageFrame(editor)).locator('#page h1').waitFor({ timeout: patience });
      },
    },
    {
      name: 'the language status says which way out is cheapest',
      async run() {
        await focusEditor(editor);
        const pick = page.locator('[id="status.languageStatus"]');
        const cheapest = (['in-car', 'lifted', 'out'] as const).reduce((a, b) => (amount(money(`${b}.total`)) < amount(money(`${a}.total`)) ? b : a));
        await retry('the pick in the status', async () => {
          await page.mouse.move(700, 300);
          await pick.hover({ timeout: 2000 });
          await page.locator('.hover-language-status', { hasText: `${cheapest} \u2212` }).waitFor({ timeout: 4000 });
          return true;
        });
        await editor.screenshot('language-status');
        await page.mouse.move(700, 300);
      },
    },
    {
      name: 'a use line leads to the shop’s file',
      async run() {
        await goTo(editor, heron, 'use "shop|.yard"');
        await runCommand(editor, 'Open Link');
        await page.locator('.tab.active[data-resource-name="shop.yard"]').waitFor({ timeout: patience });
      },
    },
    {
      name: 'a new estimate is stepped through with Tab',
      async run() {
        await runCommand(editor, 'Steelyard: New estimate');
        await waitForShown(editor, /^vehicle "Year, make, model and engine"/);
        await waitForShown(editor, /^use "(our-)?shop\.yard"/);
        await typeText(editor, 'E-7  Wren, no compression on 3');
        await waitForShown(editor, /^estimate "E-7 {2}Wren, no compression on 3"/);
        // The day it is written, the day it starts, how long its prices hold: as they stand.
        for (let i = 0; i < 4; i++) await key('Tab');
        await typeText(editor, '2011 Ostler Wren');
        await waitForShown(editor, /^vehicle "2011 Ostler Wren"/);
        await key('Tab');
        await typeText(editor, '98500');
        await waitForShown(editor, /odometer +98500 mi/);
        const { line } = await cursorPosition(editor);
        await key('Tab');
        await retry('the next gap', async () => ((await cursorPosition(editor)).line === line + 1 ? true : undefined));
        await editor.screenshot('language-new');
      },
    },
    nothingFailed(editor),
  ];
}

const amount = (text: string): number => Number(text.replace(/[^\d.]/g, ''));
