import { expect, test } from 'vitest';
import type { ChangesPanel } from '../../src/editor/changes/changes-panel.js';
import type { Version } from '../../src/editor/changes/versions.js';
import { createLanguageService, type Side } from '../../src/service/index.js';
import { editorModule } from '../security/editor-modules.js';
import { fakeEditor, gate } from './fake-editor.js';

const HASHES = ['1'.repeat(40), '2'.repeat(40)];
const shop = 'steelyard 1\nshop "S"\n  currency USD\n';
const job = (price: string): string => `steelyard 1\nuse "shop.yard"\noption a "A"\n  part "P" ${price} new\n`;
const textAt = (side: Side): string => side.service.tree(side.uri)?.text ?? '';

/** An editor whose git has the job and the shop's file in two commits, the second of which is the last. */
function withGit() {
  const editor = fakeEditor({ 'job.yard': job('30.00'), 'shop.yard': shop });
  const inCommits = new Map<string, string>(HASHES.flatMap((hash, i) => [[`${hash} /shop/job.yard`, job(`${i + 1}0.00`)], [`${hash} /shop/shop.yard`, shop]] as const));
  const asked: string[] = [];
  const fault: { at: string; error: Error | undefined } = { at: '', error: undefined };
  const read = (ref: string, path: string): Promise<string> => {
    const text = inCommits.get(`${ref === 'HEAD' ? (repository.state.HEAD?.commit ?? '') : ref} ${path}`);
    if (fault.error !== undefined && path.endsWith(fault.at)) return Promise.reject(fault.error);
    // In the words of the editor's git, which are the same for whatever failed.
    return text === undefined ? Promise.reject(new Error('Could not show object.')) : Promise.resolve(text);
  };
  const repository = {
    state: { HEAD: { commit: HASHES[1] } as { commit: string | undefined } | undefined },
    show: (ref: string, path: string) => {
      asked.push(`${ref.slice(0, 4)} ${path}`);
      return read(ref, path);
    },
    getObjectDetails: (ref: string, path: string) => (inCommits.has(`${ref} ${path}`) ? read(ref, path) : Promise.reject(Object.assign(new Error('Path not known by git'), { gitErrorCode: 'UnknownPath' }))),
    diffWith: () => Promise.resolve([]),
  };
  editor.vscode.extensions.getExtension = () => ({ activate: () => Promise.resolve({ enabled: true, getAPI: () => ({ state: 'initialized', getRepository: () => repository }) }) });
  const inCommit = async (ref: string, name = 'the last commit'): Promise<Version> =>
    (await editorModule<{ readonly inCommit: (key: string, ref: string, name: string) => Version }>('changes/versions.ts', editor.vscode)).inCommit(editor.key('job.yard'), ref, name);
  return { editor, repository, asked, fault, inCommits, inCommit };
}

const sideOf = async (version: Version): Promise<Side> => {
  const side = await version.read();
  if ('why' in side) throw new Error(side.why);
  return side;
};

test('a commit is read once, and again when the last one is another', async () => {
  const { repository, asked, inCommit } = withGit();
  const version = await inCommit('HEAD');
  const first = await sideOf(version);
  const reads = asked.length;
  expect(textAt(first)).toBe(job('20.00'));
  expect(await sideOf(version)).toBe(first);
  expect(asked).toHaveLength(reads);
  repository.state.HEAD = { commit: HASHES[0] };
  expect(textAt(await sideOf(version))).toBe(job('10.00'));
});

test.each([
  ['git fails at the estimate', 'job.yard', Object.assign(new Error('Failed to execute git'), { stderr: 'fatal: loose object is corrupt\nmore\n' }), 'git could not read job.yard: fatal: loose object is corrupt'],
  ['git fails at a shared file', 'shop.yard', new Error('Could not show object.'), 'git could not read shop.yard: Could not show object.'],
  ['git says nothing', 'shop.yard', new Error(''), 'git could not read shop.yard: it says no more.'],
])('where %s, it says so, and nothing is priced without it; the next time it is asked again', async (_, at, error, why) => {
  const { fault, inCommit } = withGit();
  const version = await inCommit('HEAD');
  Object.assign(fault, { at, error });
  expect(await version.read()).toEqual({ why });
  fault.error = undefined;
  expect(textAt(await sideOf(version))).toBe(job('20.00'));
});

test('where a commit has no such estimate, or there is no commit, it says that', async () => {
  const { repository, inCommits, inCommit } = withGit();
  inCommits.delete(`${HASHES[1]} /shop/job.yard`);
  expect(await (await inCommit('HEAD')).read()).toEqual({ why: 'job.yard is not in the last commit: it came later, or had another name.' });
  repository.state.HEAD = undefined;
  expect(await (await inCommit('HEAD')).read()).toEqual({ why: 'The repository has no commit yet.' });
});

test('a shared file that a commit doesn’t have is missing in it, and no fault of git', async () => {
  const { inCommits, inCommit } = withGit();
  inCommits.delete(`${HASHES[1]} /shop/shop.yard`);
  const { service, uri } = await sideOf(await inCommit('HEAD'));
  expect(service.diagnostics(uri).map(({ code }) => code)).toContain('use-missing');
});

/** A panel over versions that a test makes; what is posted to its page. */
async function panelOver() {
  const editor = fakeEditor({});
  const fresh = editor.emitter<string>();
  const posted: { readonly estimate: string; readonly markup: string }[] = [];
  const panels: { title: string; readonly close: () => void; readonly say: (data: unknown) => void }[] = [];
  const createWebviewPanel = () => {
    const gone = editor.emitter<undefined>();
    const messages = editor.emitter<unknown>();
    const panel = {
      title: '', visible: true, viewColumn: 2, reveal: () => undefined, dispose: () => gone.fire(undefined), close: () => gone.fire(undefined), say: (data: unknown) => messages.fire(data), onDidDispose: gone.event, onDidChangeViewState: editor.emitter().event,
      webview: { html: '', options: {}, cspSource: '', asWebviewUri: (uri: object) => uri, onDidReceiveMessage: messages.event, postMessage: (message: { readonly estimate: string; readonly markup: string }) => Promise.resolve(posted.push(message) > 0) },
    };
    panels.push(panel);
    return panel;
  };
  const { ChangesPanel: Panel } = await editorModule<{ readonly ChangesPanel: new (desk: object, dist: object) => ChangesPanel }>('changes/changes-panel.ts', { ...editor.vscode, window: { ...editor.vscode.window, createWebviewPanel } });
  return { panel: new Panel({ onFresh: fresh.event }, editor.vscode.Uri.parse('file:///dist')), posted, panels, fresh };
}

const versionOf = (name: string, price: () => string, failing: { why?: string } = {}): Version => ({
  name,
  read: () => {
    if (failing.why !== undefined) return Promise.resolve({ why: failing.why });
    const text = `steelyard 1\noption a "A"\n  part "P" ${price()} new\n`;
    return Promise.resolve({ service: createLanguageService({ read: () => ({ text }), resolvePath: () => undefined }), uri: '/a.yard', name });
  },
});

test('a pair that can’t be read leaves what is shown, its title and what it follows', async () => {
  const { panel, posted, panels, fresh } = await panelOver();
  let price = '20.00';
  expect(await panel.show({ estimate: 'file:///a.yard', before: versionOf('old', () => '10.00'), after: versionOf('now', () => price) })).toBeUndefined();
  expect(posted.at(-1)?.markup).toContain('10.00');
  expect(await panel.show({ estimate: 'file:///b.yard', before: versionOf('old', () => '1.00', { why: 'b.yard can’t be read.' }), after: versionOf('now', () => '2.00') })).toBe('b.yard can’t be read.');
  expect(panels.map(({ title }) => title)).toEqual(['What changed: a.yard']);
  price = '45.00';
  fresh.fire('file:///a.yard');
  await expect.poll(() => posted.at(-1)?.markup).toContain('45.00');
  expect(posted.every(({ estimate }) => estimate === 'file:///a.yard')).toBe(true);
});

test('a version that can’t be read any more: the page keeps what it has, says so and why, and follows again once it can', async () => {
  const { panel, posted, fresh } = await panelOver();
  const failing: { why?: string } = {};
  let price = '20.00';
  await panel.show({ estimate: 'file:///a.yard', before: versionOf('old', () => '10.00', failing), after: versionOf('now', () => price) });
  failing.why = 'git could not read <a.yard>.';
  fresh.fire('file:///a.yard');
  await expect.poll(() => posted.at(-1)?.markup).toContain('This is from before, and is not brought up to date: git could not read &lt;a.yard&gt;.');
  expect(posted.at(-1)?.markup).toContain('20.00');
  delete failing.why;
  price = '45.00';
  fresh.fire('file:///a.yard');
  await expect.poll(() => posted.at(-1)?.markup).toContain('45.00');
  expect(posted.at(-1)?.markup).not.toContain('not brought up to date');
});

test('a version that throws is told in words, and of two pairs asked for at once the later one is shown', async () => {
  const { panel, posted } = await panelOver();
  const throwing: Version = { name: 'odd', read: () => Promise.reject(new Error('of a test')) };
  expect(await panel.show({ estimate: 'file:///a.yard', before: throwing, after: versionOf('now', () => '2.00') })).toBe('What changed could not be worked out: of a test');
  const slow = gate();
  const late = versionOf('late', () => '11.00');
  const first = panel.show({ estimate: 'file:///first.yard', before: { name: 'late', read: async () => { await slow.wait(); return await late.read(); } }, after: versionOf('now', () => '12.00') });
  await panel.show({ estimate: 'file:///second.yard', before: versionOf('old', () => '21.00'), after: versionOf('now', () => '22.00') });
  slow.open();
  await first;
  expect(posted.map(({ estimate }) => estimate)).toEqual(['file:///second.yard']);
});

test('a panel that was closed keeps nothing, and a new one asks anew', async () => {
  const { panel, posted, panels } = await panelOver();
  await panel.show({ estimate: 'file:///a.yard', before: versionOf('old', () => '10.00'), after: versionOf('now', () => '20.00') });
  panels[0]?.close();
  const before = posted.length;
  panels[0]?.say({ kind: 'ready' });
  expect(posted).toHaveLength(before);
  await panel.show({ estimate: 'file:///a.yard', before: versionOf('old', () => '10.00'), after: versionOf('now', () => '35.00') });
  expect(panels).toHaveLength(2);
  panels[1]?.say({ kind: 'ready' });
  expect(posted.slice(before).every(({ markup }) => markup.includes('35.00'))).toBe(true);
});

test.each([
  ['is not among the extensions', undefined, /^This editor has no git at work; another file or the saved text can be compared\.$/],
  ['can’t be started', { activate: () => Promise.reject(new Error('of a test')) }, /^git is not installed on this machine, or is switched off in the settings \(git\.enabled\)\.$/],
  ['finds no git', { activate: () => Promise.resolve({ enabled: false, getAPI: () => { throw new Error('no git'); } }) }, /^git is not installed on this machine/],
  ['knows no repository', { activate: () => Promise.resolve({ enabled: true, getAPI: () => ({ state: 'initialized', getRepository: () => null, openRepository: () => Promise.reject(new Error('none')) }) }) }, /^This file is in no git repository\.$/],
] as const)('where the editor’s git %s, it says so', async (_, extension, why) => {
  const { editor, inCommit } = withGit();
  editor.vscode.extensions.getExtension = () => extension;
  expect(await (await inCommit('HEAD')).read()).toEqual({ why: expect.stringMatching(why) as string });
});
