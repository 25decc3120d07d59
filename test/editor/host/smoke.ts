// `node src/tools/run.mjs test/editor/host/smoke.ts`: proves that the host can do what the editor tests rely on.
import assert from 'node:assert/strict';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { openFile, pressTitleButton } from './actions.js';
import { launchBrowser, openEditor } from './browser.js';
import { install } from './ensure-host.js';
import { startHost } from './host.js';
import { repository } from './paths.js';
import { run } from './process.js';
import { checkEditor } from './smoke-editor.js';
import { step } from './smoke-step.js';
import { runInHost } from './suite.js';
import { tempFolder } from './temp.js';
import { writeThrowaway, type Throwaway } from './throwaway.js';
import { webviewFrame } from './webview.js';

async function checkSuites(browser: Browser, { extensionDir, workspace, passing, failing }: Throwaway): Promise<void> {
  for (const extensionKind of ['node', 'web'] as const) {
    await step(`suite that passes (${extensionKind})`, async () => {
      const { exitCode, log } = await runInHost({
        extensionDir,
        workspace,
        extensionKind,
        browser,
        testsPath: passing,
      });
      assert.equal(exitCode, 0, log.join('\n'));
      assert.match(log.join('\n'), /extension self-test\.host-smoke commands true/);
    });
  }
  await step('suite that fails', async () => {
    const { exitCode, log } = await runInHost({ extensionDir, workspace, browser, testsPath: failing });
    assert.notEqual(exitCode, 0);
    assert.match(log.join('\n'), /failed on purpose/);
  });
}

async function checkPackaged(browser: Browser, { extensionDir, workspace }: Throwaway): Promise<void> {
  const vsix = path.join(path.dirname(extensionDir), 'smoke.vsix');
  await step('package the extension', () =>
    run(
      path.join(repository, 'node_modules', '.bin', 'vsce'),
      ['package', '--allow-missing-repository', '--skip-license', '--out', vsix],
      { cwd: extensionDir },
    ),
  );
  const host = await step('start a host with it installed', () =>
    startHost({ workspace, vsix, automation: false, secret: true }),
  );
  try {
    const editor = await openEditor(browser, host);
    await step('use it without automation', async () => {
      await openFile(editor, 'a.yard');
      await pressTitleButton(editor, 'Smoke: Open Panel');
      const frame = await webviewFrame(
        editor,
        async (candidate) => (await candidate.locator('h1').innerText({ timeout: 500 })) === 'scripted 42',
      );
      await frame.locator('button').click();
      await editor.page.locator('.notification-toast', { hasText: 'sent from the page' }).waitFor({ timeout: 10_000 });
    });
    console.log(await editor.screenshot('smoke-packaged'));
    await editor.close();
  } finally {
    await host.stop();
  }
}

await install({ browser: true });
const temp = tempFolder('smoke');
const browser = await step('launch the browser', launchBrowser);
try {
  const throwaway = await writeThrowaway(temp.dir);
  await checkEditor(browser, throwaway);
  await checkSuites(browser, throwaway);
  await checkPackaged(browser, throwaway);
  console.log('The editor host works.');
} finally {
  await browser.close();
  await temp.remove();
}
