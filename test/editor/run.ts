// `node src/tools/run.mjs test/editor/run.ts [--pictures]`: builds the extension and runs every editor test against a
// real editor, one after the other. The last line says how many passed and failed.
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { launchBrowser, openEditor, type Editor } from './host/browser.js';
import { install } from './host/ensure-host.js';
import { startHost, type Host, type ExtensionKind } from './host/host.js';
import { repository } from './host/paths.js';
import { run } from './host/process.js';
import { runInHost } from './host/suite.js';
import { runCases, type Case, type Outcome } from './suite/cases.js';
import { drivenCases } from './suite/driven.js';
import { looksCases } from './suite/looks.js';
import { copySamples } from './suite/workspace.js';

const estimate = 'pilgrim-v6.yard';
const log = (line: string): void => console.log(line);

/** The suite inside the extension host; its count comes back in its output. */
async function inHost(browser: Browser, extensionKind: ExtensionKind): Promise<Outcome> {
  const workspace = await copySamples();
  try {
    const testsPath = path.join(repository, 'test', 'editor', 'suite', 'in-host.ts');
    const result = await runInHost({ extensionDir: repository, workspace: workspace.dir, extensionKind, browser, testsPath });
    const said = result.log.map((line) => line.replace(/^log: /, ''));
    for (const line of said) if (/^(ok|FAIL|activation)/.test(line)) log(line.replace('in host', `in host, ${extensionKind}`));
    const [, passed, failed] = /counted (\d+) (\d+)/.exec(said.join('\n')) ?? [];
    if (passed === undefined || failed === undefined) throw new Error(`The suite did not end.\n${said.join('\n')}`);
    return { passed: Number(passed), failed: Number(failed) };
  } finally {
    await workspace.remove();
  }
}

async function inEditor(browser: Browser, name: string, makeCases: (editor: Editor, host: Host) => Promise<readonly Case[]>, dir: string): Promise<Outcome> {
  const host = await startHost({ workspace: dir, extensionDir: repository });
  try {
    const editor = await openEditor(browser, host, { openFile: estimate, viewport: { width: 1400, height: 900 } });
    const outcome = await runCases(name, await makeCases(editor, host), log, async () => log(`      ${await editor.screenshot(`failed-${name}`)}`));
    await editor.close();
    return outcome;
  } finally {
    await host.stop();
  }
}

const started = Date.now();
await run('node', ['src/tools/run.mjs', 'src/tools/build.ts', '--production'], { cwd: repository });
await install({ browser: true });
const browser = await launchBrowser();
const outcomes: Outcome[] = [];
try {
  const parts: readonly (() => Promise<Outcome>)[] = [
    () => inHost(browser, 'node'),
    () => inHost(browser, 'web'),
    async () => {
      const workspace = await copySamples();
      return await inEditor(browser, 'driven', (editor) => drivenCases(editor, workspace), workspace.dir).finally(workspace.remove);
    },
    async () => {
      const workspace = await copySamples();
      return await inEditor(browser, 'looks', (editor) => Promise.resolve(looksCases(editor, process.argv.includes('--pictures'))), workspace.dir).finally(workspace.remove);
    },
  ];
  for (const part of parts) {
    outcomes.push(await part().catch((error: unknown): Outcome => {
      log(`FAIL  ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
      return { passed: 0, failed: 1 };
    }));
  }
} finally {
  await browser.close();
}
const count = (key: keyof Outcome): number => outcomes.reduce((sum, outcome) => sum + outcome[key], 0);
log(`${((Date.now() - started) / 1000).toFixed(0)} s`);
log(`${count('passed')} passed, ${count('failed')} failed`);
process.exitCode = count('failed') > 0 ? 1 : 0;
