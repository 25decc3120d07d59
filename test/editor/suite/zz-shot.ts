import { launchBrowser, openEditor } from '/work/main/test/editor/host/browser.js';
import { startHost } from '/work/main/test/editor/host/host.js';
import { repository } from '/work/main/test/editor/host/paths.js';
import { pressTitle } from '/work/main/test/editor/suite/panel.js';
import { webviewFrame } from '/work/main/test/editor/host/webview.js';
import { copySamples } from '/work/main/test/editor/suite/workspace.js';
const themes = { light: 'Default Light Modern', dark: 'Default Dark Modern', hc: 'Default High Contrast', hcl: 'Default High Contrast Light' } as const;
const names = process.argv.slice(2) as (keyof typeof themes)[];
const ws = await copySamples();
const browser = await launchBrowser();
const host = await startHost({ workspace: ws.dir, extensionDir: repository });
try {
  for (const name of names) {
    const editor = await openEditor(browser, host, { openFile: 'pilgrim-v6.yard', theme: themes[name], settings: process.env['SETTINGS'] ? JSON.parse(process.env['SETTINGS']) : {}, viewport: { width: 1400, height: 900 } });
    try {
    await pressTitle(editor, 'Show comparison');
    const frame = await webviewFrame(editor, async (f) => (await f.locator('table').count()) > 0);
    if (process.env['NOBAR']) { await editor.page.keyboard.press('Control+b'); }
    await editor.page.waitForTimeout(700);
    console.log(await editor.page.locator('.monaco-workbench').getAttribute('class')); await editor.screenshot('work-' + name);
    await frame.locator('#page').evaluate(() => (globalThis as any).document.scrollingElement.scrollTo(0, 560));
    await editor.page.waitForTimeout(300);
    await editor.screenshot('work-' + name + '-2');
    await frame.locator('summary').nth(1).click();
    await editor.page.waitForTimeout(200);
    await frame.evaluate("document.scrollingElement.scrollTo(0, 1100)");
    await editor.page.waitForTimeout(300);
    await editor.screenshot('work-' + name + '-3');
    console.log(name, JSON.stringify(editor.console.problems()));
    } catch (e) { console.log(e); await editor.screenshot('work-failed'); console.log(JSON.stringify(editor.console.all().slice(-20))); }
    await editor.close();
  }
} finally { await host.stop(); await browser.close(); await ws.remove(); }
