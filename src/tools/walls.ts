import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

/** The rooms from left to right. A room imports only itself and rooms to its left. */
const ORDER = ['language', 'vocabulary', 'estimate', 'weigh', 'report', 'service'] as const;

/** The rooms at the right end, and what they may import beside all of ORDER and themselves. */
const ENDS: Readonly<Record<string, readonly string[]>> = { editor: ['page'], cli: [], page: [], tools: ['editor', 'cli', 'page'] };

/** Rooms that must run where there is no Node: the web build, and the script inside the panel. */
const WITHOUT_NODE = new Set<string>([...ORDER, 'page']);

/** Rooms are entered by the index of the room or of one of its folders; what the panel's script and the editor say to each other stands in one file. */
const DOORS = /(^|\/)index\.ts$|^page\/messages\.ts$/;

/** Builds and measures look behind every door: nothing imports them, and what they take apart is what is built. */
const WITH_ALL_KEYS = 'tools';

/** One wall that is broken. */
export interface Breach {
  readonly file: string;
  readonly says: string;
}

/** Checks the walls of the house: direction of imports, by which doors, who may know the editor, who may know Node, no circles. */
export function breaches(root: string): Breach[] {
  const files = readdirSync(path.join(root, 'src'), { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts')).map((file) => file.split(path.sep).join('/'));
  const graph = new Map<string, string[]>();
  const found: Breach[] = [];
  for (const file of files) {
    const imports = importsOf(readFileSync(path.join(root, 'src', file), 'utf8'));
    graph.set(file, imports.filter((one) => one.startsWith('.')).map((one) => target(file, one)));
    for (const one of imports) {
      const says = wrong(file, one);
      if (says !== undefined) found.push({ file, says });
    }
  }
  return [...found, ...circles(graph)];
}

function importsOf(source: string): string[] {
  return ts.preProcessFile(source, true, true).importedFiles.map(({ fileName }) => fileName);
}

function target(file: string, written: string): string {
  return path.posix.join(path.posix.dirname(file), written).replace(/\.js$/, '.ts');
}

function wrong(file: string, written: string): string | undefined {
  const room = roomOf(file);
  if (written === 'vscode') return room === 'editor' ? undefined : 'only the editor room may import vscode';
  if (!written.startsWith('.')) {
    const isNode = written.startsWith('node:');
    if (isNode && WITHOUT_NODE.has(room)) return `${written}: the ${room} room runs where there is no Node`;
    return undefined;
  }
  const goal = target(file, written);
  const to = roomOf(goal);
  if (to === '..' || to === room) return undefined; // package.json, or the room itself
  const says = wrongWay(room, to) ?? (room === WITH_ALL_KEYS || DOORS.test(goal) ? undefined : `${to} is entered by its index`);
  return says === undefined ? undefined : `${written}: ${says}`;
}

function roomOf(file: string): string {
  return file.split('/')[0] as string;
}

/** What is wrong where one room imports another. */
function wrongWay(room: string, to: string): string | undefined {
  const from = ORDER.findIndex((one) => one === room);
  const goal = ORDER.findIndex((one) => one === to);
  if (from >= 0) return goal >= 0 && goal < from ? undefined : `${room} stands left of ${to}`;
  const extra = ENDS[room];
  if (extra === undefined) return `there is no room called ${room}`;
  if (room === 'page') return 'the page talks through its message file alone';
  return goal >= 0 || extra.includes(to) ? undefined : `${room} may not know ${to}`;
}

/** Files that import each other in a circle; imports of types count, since they tie files together all the same. */
function circles(graph: ReadonlyMap<string, readonly string[]>): Breach[] {
  const found: Breach[] = [];
  const done = new Set<string>();
  const visit = (file: string, trail: readonly string[]): void => {
    const at = trail.indexOf(file);
    if (at >= 0) {
      found.push({ file, says: `imports go in a circle: ${[...trail.slice(at), file].join(' → ')}` });
      return;
    }
    if (done.has(file)) return;
    for (const next of graph.get(file) ?? []) visit(next, [...trail, file]);
    done.add(file);
  };
  for (const file of graph.keys()) visit(file, []);
  return found;
}
