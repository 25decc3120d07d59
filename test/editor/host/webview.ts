// Finds the document of a webview. Each one sits in two nested frames of the editor, and only the innermost holds the
// extension's page.
import type { Frame } from 'playwright-core';
import type { Editor } from './browser.js';
import { patience, retry } from './retry.js';

const isContent = (frame: Frame): boolean =>
  frame.childFrames().length === 0 && frame.url().includes('/webview/browser/pre/');

/** The first webview for which `matches` is true, e.g. `async (frame) => (await frame.locator('table').count()) > 0`. */
export async function webviewFrame(
  editor: Editor,
  matches: (frame: Frame) => boolean | Promise<boolean> = () => true,
  timeout = patience,
): Promise<Frame> {
  const find = async (): Promise<Frame | undefined> => {
    for (const frame of editor.page.frames().filter(isContent)) if (await matches(frame)) return frame;
    return undefined;
  };
  return await retry('a matching webview', find, timeout);
}
