import { format } from 'node:util';

type Run = (...row: unknown[]) => unknown;
type Hook = () => unknown;

/** Tests that stand together, with what is run around them. */
interface Group {
  readonly name: string;
  readonly parent: Group | undefined;
  readonly beforeAll: Hook[];
  readonly afterAll: Hook[];
  readonly beforeEach: Hook[];
  readonly afterEach: Hook[];
  begun: boolean;
}

/** One test of a file. Its name is unique there: a second of the same name gets a number. */
export interface Collected {
  readonly name: string;
  readonly group: Group;
  readonly run: Hook;
}

/** Takes down the tests of one file, in the words that test files use, to be run one by one. */
export class Suite {
  readonly tests = new Map<string, Collected>();
  #group: Group = groupOf('', undefined);

  /** The words, as a test file imports them. */
  words(): Readonly<Record<string, unknown>> {
    const hook = (of: 'beforeAll' | 'afterAll' | 'beforeEach' | 'afterEach') => (run: Hook) => void this.#group[of].push(run);
    const test = this.#withRows((name, run) => this.#add(name, run));
    const describe = this.#withRows((name, run) => this.#within(name, run));
    return { test, it: test, describe, beforeAll: hook('beforeAll'), afterAll: hook('afterAll'), beforeEach: hook('beforeEach'), afterEach: hook('afterEach') };
  }

  /** What has to be run for one test: hooks of its groups, then itself. */
  stepsOf({ group, run }: Collected): { readonly before: readonly Hook[]; readonly run: Hook; readonly after: readonly Hook[] } {
    const groups = outermostFirst(group);
    const begun = groups.filter((one) => !one.begun);
    for (const one of begun) one.begun = true;
    return { before: [...begun.flatMap((one) => one.beforeAll), ...groups.flatMap((one) => one.beforeEach)], run, after: [...groups].reverse().flatMap((one) => one.afterEach) };
  }

  /** What has to be run when no more tests of the file will be. */
  ending(): readonly Hook[] {
    const groups = new Set([...this.tests.values()].flatMap(({ group }) => outermostFirst(group)));
    return [...groups].filter((one) => one.begun).reverse().flatMap((one) => one.afterAll);
  }

  #withRows(take: (name: string, run: Run) => void) {
    const plain = (name: string, ...rest: unknown[]) => take(name, rest.find((one) => typeof one === 'function') as Run);
    const each = (rows: readonly unknown[]) => (name: string, ...rest: unknown[]) => {
      const run = rest.find((one) => typeof one === 'function') as Run;
      for (const row of rows) {
        const words = Array.isArray(row) ? (row as unknown[]) : [row];
        take(format(name, ...words.map((word) => (typeof word === 'object' ? '…' : word))), () => run(...words));
      }
    };
    return Object.assign(plain, { each, skipIf: (left: boolean) => (left ? () => undefined : plain) });
  }

  #add(name: string, run: Run): void {
    const whole = [...outermostFirst(this.#group).map((one) => one.name), name].filter((word) => word !== '').join(' › ');
    let unique = whole;
    for (let i = 2; this.tests.has(unique); i++) unique = `${whole} (${i})`;
    this.tests.set(unique, { name: unique, group: this.#group, run: () => run() });
  }

  #within(name: string, run: Run): void {
    const outer = this.#group;
    this.#group = groupOf(name, outer);
    try {
      run();
    } finally {
      this.#group = outer;
    }
  }
}

function groupOf(name: string, parent: Group | undefined): Group {
  return { name, parent, beforeAll: [], afterAll: [], beforeEach: [], afterEach: [], begun: false };
}

function outermostFirst(group: Group): Group[] {
  return group.parent === undefined ? [group] : [...outermostFirst(group.parent), group];
}
