// `node src/tools/run.mjs test/editor/run.ts [PART…] [--pictures]`: builds the extension and runs the editor tests, or
// the parts that are named (`named` and `panelParts` below), against a real editor, one after the other. The last line says how many
// passed and failed.
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { launchBrowser, openEditor, type Editor } from './host/browser.js';
import { install } from './host/ensure-host.js';
import { startHost, type ExtensionKind } from './host/host.js';
import { repository } from './host/paths.js';
import { run } from './host/process.js';
import type { Settings } from './host/settings.js';
import { runInHost } from './host/suite.js';
import { axeCases } from './suite/axe.js';
import { runCases, type Case, type Outcome } from './suite/cases.js';
import { drivenCases } from './suite/driven.js';
import { equalsCases } from './suite/equals-json.js';
import { hostileCases } from './suite/hostile-panel.js';
import { faultCases } from './suite/faults.js';
import { gitDrivenCases } from './suite/git-driven.js';
import { keyboardCases } from './suite/keyboard.js';
import { languageDrivenCases } from './suite/language-driven.js';
import { looksCases } from './suite/looks.js';
import { makePackage, packedCases } from './suite/packed.js';
import { pageDrivenCases } from './suite/page-driven.js';
import { snapshotCases } from './suite/snapshots.js';
import { toldCases } from './suite/told.js';
import { untrustedCases } from './suite/untrusted.js';
import { withoutGitCases } from './suite/without-git.js';
import { copySamples, type Workspace } from './suite/workspace.js';

const estimate = 'pilgrim-v6.yard';
const log = (line: string): void => console.log(line);

/** The suite inside the extension host; its count comes back in its output. */
async function inHost(browser: Browser, extensionKind: ExtensionKind, suite = 'in-host'): Promise<Outcome> {
  const workspace = await copySamples();
  try {
    const testsPath = path.join(repository, 'test', 'editor', 'suite', `${suite}.ts`);
    const result = await runInHost({ extensionDir: repository, workspace: workspace.dir, extensionKind, browser, testsPath });
    const said = result.log.map((line) => line.replace(/^(log|info): /, ''));
    for (const line of said) if (/^(ok|FAIL|activation)/.test(line)) log(line.replace('in host', `in host, ${extensionKind}`));
    const [, passed, failed] = /counted (\d+) (\d+)/.exec(said.join('\n')) ?? [];
    if (passed === undefined || failed === undefined) throw new Error(`The suite did not end.\n${said.join('\n')}`);
    return { passed: Number(passed), failed: Number(failed) };
  } finally {
    await workspace.remove();
  }
}

async function inEditor(browser: Browser, name: string, makeCases: (editor: Editor) => Promise<readonly Case[]>, dir: string, settings: Settings = {}, trust?: 'asked'): Promise<Outcome> {
  const host = await startHost({ workspace: dir, extensionDir: repository, ...(trust === undefined ? {} : { trust }) });
  try {
    const editor = await openEditor(browser, host, { openFile: estimate, settings, viewport: { width: 1400, height: 900 } });
    const outcome = await runCases(name, await makeCases(editor), log, async () => log(`      ${await editor.screenshot(`failed-${name}`).catch(() => 'no picture: the window is gone')}`));
    await editor.close();
    return outcome;
  } finally {
    await host.stop();
  }
}

type MakeCases = (editor: Editor, workspace: Workspace) => Promise<readonly Case[]> | readonly Case[];

/** A session over a copy of the samples. */
function session(name: string, makeCases: MakeCases, settings: Settings = {}, trust?: 'asked'): (browser: Browser) => Promise<Outcome> {
  return async (browser) => {
    const workspace = await copySamples();
    return await inEditor(browser, name, async (editor) => await makeCases(editor, workspace), workspace.dir, settings, trust).finally(workspace.remove);
  };
}

/** What is proved of the panel: in one session by default, since each takes some seconds to begin, or one by one by name. */
const panelParts: Readonly<Record<string, MakeCases>> = {
  told: toldCases, axe: axeCases, keyboard: keyboardCases, 'equals-json': equalsCases,
  snapshots: (editor) => snapshotCases(editor, process.argv.includes('--pictures')),
  'hostile-panel': hostileCases,
};

const named: Readonly<Record<string, (browser: Browser) => Promise<Outcome>>> = {
  node: (browser) => inHost(browser, 'node'),
  web: (browser) => inHost(browser, 'web'),
  language: (browser) => inHost(browser, 'node', 'language'),
  'language-web': (browser) => inHost(browser, 'web', 'language'),
  driven: async (browser) => {
    const workspace = await copySamples();
    return await inEditor(browser, 'driven', (editor) => drivenCases(editor, workspace), workspace.dir).finally(workspace.remove);
  },
  'language-driven': async (browser) => {
    const workspace = await copySamples();
    return await inEditor(browser, 'language', (editor) => languageDrivenCases(editor, workspace), workspace.dir).finally(workspace.remove);
  },
  packed: async (browser) => {
    const workspace = await copySamples();
    const host = await startHost({ workspace: workspace.dir, vsix: await makePackage(), automation: false, secret: true });
    try {
      const editor = await openEditor(browser, host, { viewport: { width: 1400, height: 900 } });
      const outcome = await runCases('packed', await packedCases(editor, workspace), log, async () => log(`      ${await editor.screenshot('failed-packed')}`));
      await editor.close();
      return outcome;
    } finally {
      await host.stop();
      await workspace.remove();
    }
  },
  looks: async (browser) => {
    // What would only be noise in a picture.
    const plain = { 'editor.minimap.enabled': false, 'window.title': '${activeEditorShort}', 'git.blame.statusBarItem.enabled': false };
    const workspace = await copySamples();
    const pictures = process.argv.includes('--pictures');
    return await inEditor(browser, 'looks', (editor) => Promise.resolve(looksCases(editor, pictures)), workspace.dir, plain).finally(workspace.remove);
  },
  page: session('page', pageDrivenCases),
  git: session('git', gitDrivenCases),
  faults: session('faults', faultCases),
  'without-git': session('without-git', withoutGitCases, { 'git.enabled': false }),
  untrusted: session('untrusted', untrustedCases, { 'security.workspace.trust.startupPrompt': 'never', 'security.workspace.trust.banner': 'never' }, 'asked'),
  panel: session('panel', async (editor, workspace) => {
    const all: Case[] = [];
    for (const [part, makeCases] of Object.entries(panelParts)) all.push(...(await makeCases(editor, workspace)).map(({ name, run }): Case => ({ name: `${part}: ${name}`, run })));
    return all;
  }),
};

const started = Date.now();
const parts = { ...Object.fromEntries(Object.entries(panelParts).map(([name, makeCases]) => [name, session(name, makeCases)])), ...named };
const asked = process.argv.slice(2).filter((word) => word in parts);
await run('node', ['src/tools/run.mjs', 'src/tools/build.ts', '--production'], { cwd: repository });
await install({ browser: true });
const browser = await launchBrowser();
const outcomes: Outcome[] = [];
try {
  for (const name of asked.length > 0 ? asked : Object.keys(named)) {
    outcomes.push(await (parts[name] as (typeof named)[string])(browser).catch((error: unknown): Outcome => {
      log(`FAIL  ${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
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
