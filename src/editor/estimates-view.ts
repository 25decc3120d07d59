import * as vscode from 'vscode';
import { inOrder, LIST_STATES, moneyText, RULED_OUT, rowOf, stateTitles, waitsText, wordsOf, type Listed, type ListRow } from '../report/index.js';
import type { Desk } from './desk.js';
import { inTurns } from './in-turns.js';
import type { Shelf } from './language/shelf.js';
import { nameOf, type Key } from './places.js';
import { today } from './today.js';

type StateName = ListRow['state']['state'];
type Node = { readonly state: StateName; readonly own: readonly Listed[] } | Listed;

/** How far it is, is told once for so many. */
const TOLD = 8;
/** A search of the workspace that failed is tried again after so long, in ms. */
const REST = 10_000;

/**
 * The estimates of the workspace by state, in the explorer. Nothing is read before somebody looks at it; then each
 * file once, and again when it or a file that it uses has changed.
 */
export class EstimatesView implements vscode.TreeDataProvider<Node>, vscode.Disposable {
  private readonly changed = new vscode.EventEmitter<undefined>();
  readonly onDidChangeTreeData = this.changed.event;
  private readonly rows = new Map<Key, { readonly row: ListRow | 'failed' | undefined; readonly day: string; readonly uses: readonly Key[] }>();
  private readonly view: vscode.TreeView<Node>;
  private reading: Promise<string | undefined> | undefined;
  /** Files that changed while they were read: their rows may be of before. */
  private readonly changing = new Set<Key>();
  private timer: ReturnType<typeof setTimeout> | undefined;
  private readonly subscriptions: readonly vscode.Disposable[];

  constructor(private readonly desk: Desk, private readonly shelf: Shelf) {
    this.view = vscode.window.createTreeView('steelyard.estimates', { treeDataProvider: this, showCollapseAll: true });
    this.subscriptions = [this.view, this.changed, shelf.onChanged((key) => this.outOfDate(key)), desk.onFresh((key) => this.outOfDate(key))];
  }

  async getChildren(of?: Node): Promise<Node[]> {
    if (of !== undefined) return 'state' in of ? [...of.own] : [];
    const trouble = await (this.reading ??= this.readAll());
    this.reading = undefined;
    const entries = inOrder([...this.rows].flatMap(([file, { row }]) => (row === undefined || row === 'failed' ? [] : [{ file, row }])));
    this.view.message = this.messageFor(trouble, entries.length);
    if (trouble !== undefined) this.soon(REST);
    return LIST_STATES.flatMap((state) => {
      const own = entries.filter(({ row }) => row.state.state === state);
      return own.length === 0 ? [] : [{ state, own }];
    });
  }

  getTreeItem(node: Node): vscode.TreeItem {
    if ('state' in node) {
      const item = new vscode.TreeItem(stateTitles[node.state], node.state === 'closed' || node.state === 'expired' ? vscode.TreeItemCollapsibleState.Collapsed : vscode.TreeItemCollapsibleState.Expanded);
      item.id = node.state;
      item.description = String(node.own.length);
      return item;
    }
    const { file: key, row } = node;
    const uri = vscode.Uri.parse(key, true);
    const item = new vscode.TreeItem(row.title ?? row.vehicle ?? nameOf(key), vscode.TreeItemCollapsibleState.None);
    item.id = key;
    item.description = shortly(row);
    item.tooltip = [nameOf(key), row.title, row.vehicle, ...fully(row)].filter((one) => one !== undefined).join('\n');
    item.resourceUri = uri;
    item.iconPath = new vscode.ThemeIcon('law');
    item.command = { command: 'vscode.open', title: 'Open', arguments: [uri] };
    item.accessibilityInformation = { label: [row.title ?? nameOf(key), stateTitles[row.state.state], ...fully(row)].join(', ') };
    return item;
  }

  dispose(): void {
    clearTimeout(this.timer);
    this.subscriptions.forEach((one) => void one.dispose());
  }

  /** Reads what is not read yet; answers with what stood in the way. */
  private async readAll(): Promise<string | undefined> {
    const day = today();
    const keys = await this.shelf.all().catch((error: unknown) => `The workspace could not be searched for estimates: ${wordsOf(error)}`);
    if (typeof keys === 'string') return keys;
    for (const key of [...this.rows.keys()]) if (!keys.includes(key)) this.rows.delete(key);
    const wanted = keys.filter((key) => this.rows.get(key)?.day !== day);
    this.changing.clear();
    // One by one: a file that one of them uses would be let go of by another.
    await inTurns(wanted, 1, {
      work: (key) => this.readOne(key, day),
      tell: (done) => {
        if (done % TOLD === 0 && done < wanted.length) this.view.message = `Reading: ${done} of ${wanted.length}`;
      },
      failed: (key) => void this.rows.set(key, { row: 'failed', day, uses: [] }),
    });
    return undefined;
  }

  private async readOne(key: Key, day: string): Promise<void> {
    const { service } = this.desk;
    const read = await this.desk.whole(key);
    const uses = service.uses(key);
    // Told of while it was read: whoever looks next has it read again.
    if (![key, ...uses].some((one) => this.changing.has(one))) this.rows.set(key, { row: read ? rowOf(service.weighing(key), day) : undefined, day, uses });
    this.desk.letGo(key);
  }

  /** What the list says above itself. */
  private messageFor(trouble: string | undefined, count: number): string {
    const failed = [...this.rows].flatMap(([key, { row }]) => (row === 'failed' ? [nameOf(key)] : []));
    if (trouble !== undefined) return trouble;
    if (failed.length > 0) return `Not among them, since they could not be worked out: ${failed.join(', ')}`;
    return count === 0 ? 'No estimates in this workspace yet.' : '';
  }

  private outOfDate(changed: Key): void {
    this.changing.add(changed);
    let any = !this.rows.has(changed);
    for (const [key, { uses }] of this.rows) if (key === changed || uses.includes(changed)) any = this.rows.delete(key);
    if (any) this.soon(400);
  }

  private soon(ms: number): void {
    if (!this.view.visible) return;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.changed.fire(undefined), ms);
  }
}

/** Beside the title: what it comes to, how old it is. */
function shortly({ pick, money, age }: ListRow): string {
  return [...(pick === undefined ? [] : [`${moneyText(pick.amount, money)} ${money.currency.code}`.trimEnd()]), ...(age === undefined ? [] : [`${age} d`])].join(' · ');
}

function fully({ pick, money, age, waits, whole }: ListRow): string[] {
  return [
    ...(pick === undefined ? [] : [`${pick.title}${pick.by === 'cheapest' ? ' (the cheapest)' : pick.ruledOut.length > 0 ? ` (${RULED_OUT})` : ''}: ${moneyText(pick.amount, money)} ${money.currency.code}`.trimEnd()]),
    ...(age === undefined ? [] : [age === 1 ? 'one day old' : `${age} days old`]),
    ...(waits === undefined ? [] : [`waits for ${waitsText(waits, (amount) => moneyText(amount, money))}`]),
    ...(whole ? [] : ['has lines that can’t be read']),
  ];
}
