import { collects, heap } from './heap.js';
import { manyFiles } from './many-files.js';
import { row } from './measure.js';

const FILES = 1_000;

/** A workspace of many estimates, each step once, in the order of a day's work: a table. */
export function measureManyFiles(): string[] {
  const many = manyFiles(FILES);
  const { texts, estimates, shops, library } = many;
  const everyFile = [...texts.keys()];
  const shop = shops[2] as string;
  const before = heap();
  const { service } = many.opened();
  const checkAll = () => estimates.forEach(({ uri }) => void service.allDiagnostics(uri));
  const shared = texts.get(library)?.indexOf('coolant') ?? 0;
  const lines: string[] = [];
  const step = (label: string, work: () => unknown) => {
    const started = performance.now();
    work();
    const ms = performance.now() - started;
    lines.push(row(label, `${ms.toFixed(0)} ms`, `${(FILES / (ms / 1_000)).toFixed(0)}`));
  };
  step('check of all files, the first time', checkAll);
  const after = heap();
  step('check again, nothing changed', checkAll);
  texts.set(shop, texts.get(shop)?.replace(/(rate mechanical .*) (\d+)\.00/, '$1 151.00') ?? '');
  step('check after a rate that a quarter of them use', checkAll);
  step('every use of a shared part', () => service.references(library, shared, everyFile));
  step('rename of a shared part', () => service.rename(library, shared, 'antifreeze', everyFile));
  step('a symbol of the workspace', () => service.workspaceSymbols('coolant pump', everyFile));
  const heads = ['', row(`${FILES.toLocaleString('en')} estimates, ${everyFile.length - FILES} shared files`, 'once', 'files/s')];
  return [...heads, ...lines, `Heap: ${after.toFixed(0)} MB with all files known, ${(after - before).toFixed(0)} MB more than before${!collects ? ' (garbage not collected: run node with --expose-gc)' : ''}.`];
}
