// Puts the editor into a theme, chosen as a user would: one that only stands in the settings is not always taken up
// by a fresh session.
import type { Editor } from '../host/browser.js';
import { patience, retry } from '../host/retry.js';

/** The themes by the names that the editor lists, with the class that each gives to what is drawn in it. */
export const themes = {
  light: ['Light Modern', 'vs'],
  dark: ['Dark Modern', 'vs-dark'],
  'high-contrast': ['Dark High Contrast', 'hc-black'],
  'high-contrast-light': ['Light High Contrast', 'hc-light'],
} as const;

export type ThemeName = keyof typeof themes;

export async function chooseTheme({ page }: Editor, name: ThemeName): Promise<void> {
  const [label, kind] = themes[name];
  const box = page.locator('.quick-input-widget');
  const entry = box.locator('.monaco-list-row').filter({ has: page.getByText(label, { exact: true }) });
  await retry(`the theme ${label}`, async () => {
    await page.keyboard.press('Control+k');
    await page.keyboard.press('Control+t');
    await box.locator('input.input').fill(label, { timeout: 2000 });
    await entry.first().click({ timeout: 3000 });
    await page.locator(`.monaco-workbench.${kind}`).waitFor({ timeout: 5000 });
    return true;
  }, 2 * patience);
  await box.waitFor({ state: 'hidden', timeout: patience });
}
