// Every figure in the panel is the one that `steelyard weigh --json` prints, to the digit; sampled ones rounded as the
// page says. What is shown is held against the JSON by rules (`json-rules.ts`), written here once more: how a figure is
// written comes from the platform's Intl (ECMA-402), which takes exact decimals, not from the product.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { openFile } from '../host/actions.js';
import type { Editor } from '../host/browser.js';
import { repository } from '../host/paths.js';
import type { Case } from './cases.js';
import { checkPage, type Walked } from './json-rules.js';
import { Leaves } from './leaves.js';
import { pageTitled, openPanel } from './panel.js';
import type { Workspace } from './workspace.js';

const samples = ['pilgrim-v6', 'tarn-inline', 'kestrel-flat', 'heron-pump'] as const;

/** What the JSON has and the panel does not show on purpose, by its path there; and why. */
const notShown: readonly (readonly [RegExp, string])[] = [
  [/^(steelyard|report|currency\.digits|pick)$|\.(written|complete|rank|proven)$/, 'words about the report, told by which column stands where and what is marked'],
  [/\.at\.(file|line|column)$/, 'where a figure leads when it is pressed'],
  [/\.(id|name|kind|share|with(\.\d+)?|unit|condition|sort|verdict|measure|way|label|line|to|choose|answer)$|\.(conditions|options|shows)\.\d+/, 'names and kinds; sentences and rows say them in words'],
  [/\.figures\.(net|comes-back)\./, 'sums between Total and Cost in all; the page has their parts'],
  [/\.figures\.(access-hours|waiting)\.|\.calendar\.(bay|waiting)\./, 'read off the calendar, and in its hover'],
  [/\.figures\.(?!total\.)[a-z-]+\.(low|high)$|\.(now|alone|saved|resale|perMonth|downtime|price|charge|refund|taxBack|days|amount|hours|quantity|total|sold|cost|margin)\.(low|high)$/, 'the ends of a figure; the page shows them of the total, and unfolded'],
  [/\.calendar\.(hoursPerDay|technicians|gap|byChance\.)|\.tasks\.\d+\.(start|end|counts)/, 'told in the sentence below the calendar, and as dates'],
  [/\.risk\.(cases|total\.|inAll\.mean|days\.)/, 'the page shows the cost in all and the day, which is a date where there is one'],
  [/\.ways\.(pinned|unpinned|chosen\.ways|others\.\d+\.ways)/, 'told by the names of the ways in'],
  [/^options\.(as-it-stands|sell)\.ways\.chosen\./, 'there is no way in to choose where nothing is got at'],
  [/^state\./, 'how far the estimate has come is shown in the list of estimates'],
  [/\.cores\./, 'lines of their own, and what comes back'],
  [/\.lines\.\d+\.quantity/, 'stands behind the line as what was multiplied'],
  [/^flips\.\d+\.(holds|flips|value|share)$|^flips\.([5-9]|\d\d+)\.|^flipsBeyond/, 'the sentence has them, rounded; the five nearest are shown'],
  [/^inspections\.\d+\.(worth|net|perfectWorth|price\.likely|results\.\d+\.(chance|changes))/, 'the sentence has them, rounded'],
  [/\.shopOnly\.by\.\d+\.(sold|cost|unknown)/, 'only what is left is shown'],
];

export function equalsCases(editor: Editor, workspace: Workspace): readonly Case[] {
  return [
    {
      name: 'the panel is there',
      run: () => openPanel(editor),
    },
    ...samples.map((sample): Case => ({
      name: `${sample}: every figure of the page is the one of weigh --json, and every figure of that is on the page`,
      async run() {
        const json = JSON.parse(execFileSync('node', [path.join(repository, 'dist', 'cli.js'), 'weigh', '--json', `${sample}.yard`], { cwd: workspace.dir, encoding: 'utf8', maxBuffer: 1 << 26 })) as object;
        const leaves = new Leaves(json);
        await editor.page.keyboard.press('Control+1');
        await openFile(editor, `${sample}.yard`);
        const frame = await pageTitled(editor, leaves.take('title'));
        const checked = checkPage(await frame.evaluate<Walked>(walk), leaves);
        // What comes to nothing in every option has no row.
        const left = leaves.left().filter((one) => !notShown.some(([pattern]) => pattern.test(one)));
        assert.deepEqual(left, [], 'in the JSON, but not on the page');
        assert.ok(checked > 150, `only ${checked} figures`);
        console.log(`      ${checked} figures`);
      },
    })),
  ];
}

// Runs in the page, and is text because this project's types know no DOM. Texts are taken as they are in the tree, so
// that folded lists are read too; without what is said only to those who can't see what stands around it.
const walk = `(() => {
  const said = (one) => { const copy = one?.cloneNode(true); copy?.querySelectorAll('.unseen').forEach((hidden) => hidden.remove()); return (copy?.textContent ?? '').replace(/\\s+/g, ' ').trim(); };
  const key = (one, selector) => one.closest(selector)?.dataset.key;
  const cells = (row) => [...row.querySelectorAll('th, td')].map(said);
  const all = (selector, of = document) => [...of.querySelectorAll(selector)];
  return {
    figures: all('#page [data-figure]').map((one) => ({ id: one.dataset.figure, text: said(one), cell: said(one.closest('td, th, li') ?? one), cells: one.closest('tr') === null ? [] : cells(one.closest('tr')), section: key(one, 'section[data-key]'), row: key(one, 'tr'), body: key(one, 'tbody'), column: key(one, 'td, th') })),
    lists: all('[data-key="lines"] > details').map((one) => ({ key: one.dataset.key, sum: said(one.querySelector('summary .said')), foot: cells(one.querySelector('tfoot tr')), groups: all('tbody', one).map((body) => ({ key: body.dataset.key, sum: cells(body.querySelector('[data-key=sum]')).at(-1) })) })),
    numbers: all('.charted details').map((one) => ({ key: one.dataset.key.replace(/ numbers$/, ''), rows: all('tr', one).map(cells) })),
    sentences: { verdict: all('[data-key=verdict] p').map(said).join(' '), cautions: all('[data-key=cautions] :is(p, li)').map(said), vehicle: said(document.querySelector('header p')), currency: said(document.querySelector('[data-key=figures] thead td')) },
  };
})()`;
