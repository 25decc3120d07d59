// What a screen reader makes of the panel: the browser's own tree of roles and names, as lines.
import assert from 'node:assert/strict';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { CDPSession } from 'playwright-core';
import type { Editor } from '../host/browser.js';
import { repository } from '../host/paths.js';
import { retry } from '../host/retry.js';
import type { Case } from './cases.js';
import { foldAll, pageFrame, openPanel, waitForLater } from './panel.js';

const goldenFile = path.join(repository, 'test', 'editor', 'golden', 'told-pilgrim-v6.txt');

export function toldCases(editor: Editor): readonly Case[] {
  return [
    {
      name: 'the panel tells its story in the order of test/editor/golden/told-pilgrim-v6.txt (UPDATE_GOLDEN=1 writes it)',
      async run() {
        await openPanel(editor);
        const frame = await pageFrame(editor);
        await waitForLater(frame);
        // The picture is looked for on disk after the figures are there.
        await retry('the picture', async () => ((await frame.locator('[data-key="findings"] img').count()) > 0 ? true : undefined));
        await foldAll(frame, 'folded');
        const lines = await toldBy(editor);
        const told = `${lines.filter(({ depth }) => depth >= 0).map(({ depth, role, name }) => `${'  '.repeat(depth)}${role}${name === '' ? '' : ` ${name}`}`).join('\n')}\n`;
        if (process.env['UPDATE_GOLDEN'] === '1') await writeFile(goldenFile, told);
        assert.deepEqual(told.split('\n'), (await readFile(goldenFile, 'utf8')).split('\n'));
      },
    },
    {
      name: 'unfolded: no control, image, table or region without a name, and no step between headings is left out',
      async run() {
        const frame = await pageFrame(editor);
        await foldAll(frame, 'unfolded');
        const lines = await toldBy(editor);
        const named = new Set(['button', 'DisclosureTriangle', 'textbox', 'spinbutton', 'slider', 'link', 'image', 'img', 'table', 'region', 'heading']);
        assert.deepEqual(lines.filter(({ role, name }) => named.has(role) && name.trim() === ''), []);
        const levels = lines.flatMap(({ level }) => level ?? []);
        assert.equal(levels[0], 1);
        levels.forEach((level, i) => assert.ok(level <= (levels[i - 1] ?? 0) + 1, `a heading of level ${level} after one of ${levels[i - 1] ?? 0}`));
        assert.equal(levels.filter((level) => level === 1).length, 1);
        assert.ok(lines.length > 500, `only ${lines.length} pieces`);
      },
    },
  ];
}

interface Told {
  /** Below 0: a control inside a row, whose line tells it already. */
  readonly depth: number;
  readonly role: string;
  readonly name: string;
  readonly level: number | undefined;
}

interface AxNode {
  readonly nodeId: string;
  readonly ignored: boolean;
  readonly role?: { readonly value: string };
  readonly name?: { readonly value: string };
  readonly properties?: readonly { readonly name: string; readonly value: { readonly value?: unknown } }[];
  readonly childIds?: readonly string[];
}

/** Told as part of what holds them, or only layout. */
const passed = new Set(['none', 'generic', 'InlineTextBox', 'RootWebArea', 'LineBreak', 'rowgroup', 'paragraph', 'ListMarker', 'LabelText', 'strong', 'caption', 'sectionheader']);
/** Their inside is their name. */
const whole = new Set(['button', 'heading', 'image', 'img', 'DisclosureTriangle', 'textbox']);
const cells = new Set(['cell', 'columnheader', 'rowheader', 'gridcell']);

async function toldBy({ page }: Editor): Promise<readonly Told[]> {
  const session = await page.context().newCDPSession(page);
  const { nodes } = (await session.send('Accessibility.getFullAXTree', { frameId: await contentFrame(session) })) as { readonly nodes: readonly AxNode[] };
  await session.detach();
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const insideOf = ({ childIds = [] }: AxNode): readonly AxNode[] => childIds.flatMap((id) => byId.get(id) ?? []);
  const roleOf = (node: AxNode): string => (node.ignored ? 'none' : (node.role?.value ?? 'none'));
  const nameOf = (node: AxNode): string => (node.name?.value ?? '').replace(/\s+/g, ' ').trim();
  const told: Told[] = [];
  /** What can be pressed stands in brackets, what can be typed in in braces. */
  const inWords = (node: AxNode): string => {
    const role = roleOf(node);
    if (role === 'button') return `[${nameOf(node)}]`;
    if (role === 'textbox') return `{${nameOf(node)}}`;
    return role === 'StaticText' ? nameOf(node) : insideOf(node).map(inWords).filter((one) => one !== '').join(' ');
  };
  const walk = (node: AxNode, depth: number): void => {
    const [role, name] = [roleOf(node), nameOf(node)];
    if (role === 'row') {
      const of = cellsOf(node);
      told.push({ depth, role, name: of.map(inWords).join(' | '), level: undefined });
      of.flatMap(controlsOf).forEach((one) => told.push({ depth: -1, role: roleOf(one), name: nameOf(one), level: undefined }));
      return;
    }
    const shown = !passed.has(role) && !(role === 'StaticText' && name === '') && !(role === 'group' && name === '');
    if (shown) told.push({ depth, role, name, level: role === 'heading' ? Number(node.properties?.find((one) => one.name === 'level')?.value.value) : undefined });
    if (!whole.has(role)) for (const child of insideOf(node)) walk(child, shown ? depth + 1 : depth);
  };
  const cellsOf = (node: AxNode): readonly AxNode[] => insideOf(node).flatMap((one) => (cells.has(roleOf(one)) ? [one] : cellsOf(one)));
  const controlsOf = (node: AxNode): readonly AxNode[] => insideOf(node).flatMap((one) => (whole.has(roleOf(one)) ? [one] : controlsOf(one)));
  const [root] = nodes;
  if (root !== undefined) walk(root, 0);
  return told;
}

interface FrameTree {
  readonly frame: { readonly id: string; readonly url: string };
  readonly childFrames?: readonly FrameTree[];
}

/** The editor writes the page of a panel into the innermost of its frames, which for the browser still has the address of the outer one. */
async function contentFrame(session: CDPSession): Promise<string> {
  const innermost = ({ frame, childFrames = [] }: FrameTree): readonly string[] =>
    childFrames.length > 0 ? childFrames.flatMap(innermost) : frame.url.includes('/webview/browser/pre/') ? [frame.id] : [];
  const { frameTree } = (await session.send('Page.getFrameTree')) as { readonly frameTree: FrameTree };
  const [only, ...others] = innermost(frameTree);
  if (only === undefined || others.length > 0) throw new Error('There is not one panel.');
  return only;
}
