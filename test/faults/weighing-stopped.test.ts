import { afterEach, describe, expect, test, vi } from 'vitest';
import { checkSarif } from '../../src/cli/check-sarif.js';
import { foundIn } from '../../src/cli/found.js';
import type { ComparisonView } from '../../src/editor/comparison-view.js';
import type { Status } from '../../src/editor/language/status.js';
import { createLanguageService, type ServiceHost } from '../../src/service/index.js';
import type { Weighing } from '../../src/service/types.js';
import * as weighing from '../../src/weigh/weigh.js';
import { figuresIn, isWellFormed, verdictIn } from '../page/estimates.js';
import { editorModule } from '../security/editor-modules.js';
import { fakeEditor } from './fake-editor.js';

// Weighing has no fault that is known: here it is made to throw where it stands.

const uri = 'file:///shop/this.yard';
const withPrice = (price: string): string => `steelyard 1\nestimate "Pump"\noption a "Way A"\n  part "P" ${price} new\noption b "Way B"\n  part "Q" 90.00 new\n`;
const hostOf = (texts: Readonly<Record<string, string>>): ServiceHost => ({ read: (file) => (texts[file] === undefined ? 'missing' : { text: texts[file] }), resolvePath: (_, written) => `file:///shop/${written}` });
const failing = (): void => void vi.spyOn(weighing, 'weigh').mockImplementation(() => { throw new RangeError('<b>of a test</b>'); });
afterEach(() => vi.restoreAllMocks());

describe('weighing that throws', () => {
  const SAYS = 'Working out the figures of this file stopped with “<b>of a test</b>”.';
  const broken = `${withPrice('1,250.00')}use "shop.yard"\n`;

  test('is told on the first line, with all that was found while reading; the service knows what the file uses', () => {
    const service = createLanguageService(hostOf({ [uri]: broken }));
    failing();
    const found = service.diagnostics(uri);
    expect(found.map(({ code }) => code)).toEqual(expect.arrayContaining(['weighing-stopped', 'thousands-comma']));
    expect(found.filter(({ code }) => code === 'weighing-stopped')).toEqual([expect.objectContaining({ severity: 'error', message: expect.objectContaining({ what: SAYS }) as object })]);
    expect(service.uses(uri)).toEqual(['file:///shop/shop.yard']);
    expect(() => service.weighing(uri)).toThrow('<b>of a test</b>');
  });

  test('is no longer told once it answers for another text, and then all is as if it had never been', () => {
    const texts = { [uri]: withPrice('20.00') };
    const service = createLanguageService(hostOf(texts));
    failing();
    expect(service.diagnostics(uri).map(({ code }) => code)).toContain('weighing-stopped');
    vi.restoreAllMocks();
    texts[uri] = withPrice('21.00');
    expect(service.diagnostics(uri)).toEqual(createLanguageService(hostOf(texts)).diagnostics(uri));
    expect(service.diagnostics(uri).map(({ code }) => code)).not.toContain('weighing-stopped');
  });

  test('is an error of that file in the terminal, whose other files are checked; a log for build servers says that it is not whole', () => {
    const other = 'file:///shop/other.yard';
    const host = hostOf({ [uri]: withPrice('20.00'), [other]: broken });
    failing();
    const { asked, found, unread } = foundIn([uri, other], createLanguageService(host), { host, open: (file) => file, nameOf: (file) => file, forget: () => undefined });
    expect(found.map(({ finding }) => `${finding.file} ${finding.code}`)).toEqual(expect.arrayContaining([`${uri} weighing-stopped`, `${other} weighing-stopped`, `${other} thousands-comma`]));
    expect(unread).toEqual([]);
    vi.restoreAllMocks();
    expect(checkSarif(asked, found, { version: '1.2.3', fine: false }, (file) => ({ identity: file, path: 'this.yard', from: 'source-root' })).runs[0]?.invocations).toEqual([{ executionSuccessful: false, exitCode: 1 }]);
  });
});

describe('in the editor', () => {
  async function viewOver(texts: Record<string, string>) {
    const editor = fakeEditor({});
    const log = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    const service = createLanguageService(hostOf(texts));
    const { ComparisonView: View } = await editorModule<{ readonly ComparisonView: new (desk: object, key: string, pictureOf: () => object) => ComparisonView }>('comparison-view.ts', editor.vscode);
    const desk = { service, positions: { range: () => ({ start: { line: 0 } }) } };
    const view = new View(desk, uri, () => ({ kind: 'absent' }));
    return { view, desk, service, log, laterNow: () => (view.markup(), view.laterMarkup()) };
  }
  const banner = (page: string): string => /<div data-key="stopped" role="status">(.*?)<\/div>/.exec(page)?.[1] ?? 'no place for it';

  test('the panel keeps the last figures, says so above them and at each option, and is itself again after the next good text', async () => {
    const texts = { [uri]: withPrice('20.00') };
    const { view, log } = await viewOver(texts);
    const good = view.markup();
    expect(banner(good)).toBe('');
    const later = view.laterMarkup();
    failing();
    texts[uri] = withPrice('21.00');
    const page = view.markup();
    expect(banner(page)).toBe('<p class="verdict broken"><strong>All figures here are from before, not of the text as it stands.</strong> Working it out stopped with “&lt;b&gt;of a test&lt;/b&gt;”: a fault of this tool. Please report it, with the line that was written last.</p>');
    expect(figuresIn(page).get('a.total')).toBe('20.00');
    expect(page.match(/<span class="broken">last good figures; working out the text as it stands stopped<\/span>/g)).toHaveLength(2);
    expect(page.match(/<td data-key="[ab]" class="(?!last-good)/g)).toBeNull();
    expect(isWellFormed(page)).toBe(true);
    expect(log).toHaveBeenCalledWith(expect.objectContaining({ message: '<b>of a test</b>' }));
    expect(view.laterMarkup()).toBe(later);
    vi.mocked(weighing.weigh).mockRestore();
    texts[uri] = withPrice('22.00');
    expect(view.markup()).toBe((await viewOver(texts)).view.markup());
  });

  test('a panel that is opened on it says that there is nothing to show', async () => {
    const { view } = await viewOver({ [uri]: withPrice('20.00') });
    failing();
    const page = view.markup();
    expect(page).toContain('<h1>this.yard</h1>');
    expect(banner(page)).toContain('There are no figures of this text.');
    expect(figuresIn(page).size).toBe(0);
    expect(view.laterMarkup()).toBeUndefined();
  });

  test('where what helps to decide throws, the figures of today stand, and a word in its place', async () => {
    const { view, desk, service, log } = await viewOver({ [uri]: withPrice('20.00') });
    let throws = false;
    const { comparison, ...rest } = service.weighing(uri);
    const trap = { ...comparison, get estimate() { if (throws) throw new Error('of a decision'); return comparison.estimate; } };
    desk.service = { ...service, weighing: (): Weighing => ({ ...rest, comparison: trap }) };
    expect(banner(view.markup())).toBe('');
    throws = true;
    const part = view.laterMarkup() ?? '';
    expect(verdictIn(part)).toMatch(/^Way A costs 20.00: 70.00 less than the next, Way B\./);
    expect(part).toContain('<div data-key="decision" data-later><p class="broken" role="status">What helps to decide could not be worked out. Working it out stopped with “of a decision”: a fault of this tool. Please report it, with the line that was written last.</p></div>');
    expect(part).toContain('<div data-key="shop-only" data-later></div>');
    expect(log).toHaveBeenCalledWith(expect.objectContaining({ message: 'of a decision' }));
    throws = false;
    expect(view.laterMarkup()).toBe((await viewOver({ [uri]: withPrice('20.00') })).laterNow());
  });

  test('the status bar says that nothing is worked out, not what was picked before', async () => {
    const texts = { [uri]: withPrice('20.00') };
    const editor = fakeEditor({});
    const fresh = editor.emitter<string>();
    const item = { name: '', text: '', detail: '', command: {}, dispose: () => undefined };
    const document = { uri: { toString: () => uri, scheme: 'file', path: '/shop/this.yard' }, languageId: 'steelyard' };
    const window = { ...editor.vscode.window, activeTextEditor: { document }, onDidChangeActiveTextEditor: editor.emitter().event };
    const { Status: Bar } = await editorModule<{ readonly Status: new (desk: object) => Status }>('language/status.ts', { ...editor.vscode, window, languages: { createLanguageStatusItem: () => item } });
    const bar = new Bar({ service: createLanguageService(hostOf(texts)), onFresh: fresh.event });
    fresh.fire(uri);
    expect(item.text).toBe('a −70.00');
    failing();
    texts[uri] = withPrice('21.00');
    fresh.fire(uri);
    expect(item).toMatchObject({ text: 'not worked out', detail: 'Working out the figures stopped with “<b>of a test</b>”. Please report it.' });
    bar.dispose();
  });
});
