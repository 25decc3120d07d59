import { transformSync } from 'esbuild';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import vm from 'node:vm';

/** What the switches in one instrumented source ask: is this mutant on; and what they tell: these mutants are passed. */
export interface Switches {
  readonly isOn: (id: string) => boolean;
  readonly passed: (...ids: string[]) => void;
}

type Compiled = (module: { exports: object }, require: (name: string) => unknown, dirname: string, url: string, isOn: Switches['isOn'], passed: Switches['passed']) => void;

/**
 * Loads TypeScript modules of this repository in this process, compiled once and run as often as is asked: a mutant needs
 * the tests anew, and where it is passed while modules load, the sources too.
 */
export class Modules {
  readonly #compiled = new Map<string, Compiled>();
  readonly #loaded = new Map<string, { exports: object }>();
  readonly #require: NodeJS.Require;

  /** `instead` are packages that tests get from us; `sourceOf` gives the text of a file where it isn't the one on disk. */
  constructor(readonly root: string, readonly instead: ReadonlyMap<string, object>, readonly sourceOf: (file: string) => string | undefined, readonly switchesOf: (file: string) => Switches) {
    this.#require = createRequire(path.join(root, 'package.json'));
  }

  load(file: string): object {
    const before = this.#loaded.get(file);
    if (before !== undefined) return before.exports;
    const module = { exports: {} };
    this.#loaded.set(file, module);
    const { isOn, passed } = this.switchesOf(file);
    const absolute = path.join(this.root, file);
    this.#compile(file)(module, (name) => this.#find(file, name), path.dirname(absolute), `file://${absolute}`, isOn, passed);
    return module.exports;
  }

  /** Forgets what was loaded of the files that are meant. */
  forget(meant: (file: string) => boolean): void {
    for (const file of this.#loaded.keys()) if (meant(file)) this.#loaded.delete(file);
  }

  /** Forgets the compiled form as well, where another text is wanted from now on. */
  compileAnew(meant: (file: string) => boolean): void {
    for (const file of this.#compiled.keys()) if (meant(file)) this.#compiled.delete(file);
  }

  #find(from: string, name: string): unknown {
    const ours = this.instead.get(name);
    if (ours !== undefined) return ours;
    if (!name.startsWith('.')) return this.#require(name);
    const target = path.posix.join(path.posix.dirname(from), name);
    const source = target.replace(/\.js$/, '.ts');
    return existsSync(path.join(this.root, source)) && source.endsWith('.ts') ? this.load(source) : this.#require(path.join(this.root, target));
  }

  #compile(file: string): Compiled {
    const before = this.#compiled.get(file);
    if (before !== undefined) return before;
    const text = this.sourceOf(file) ?? readFileSync(path.join(this.root, file), 'utf8');
    const { code } = transformSync(text, { loader: 'ts', format: 'cjs', target: 'node20', define: { 'import.meta.dirname': '__folder', 'import.meta.url': '__url' } });
    const made = vm.compileFunction(code, ['module', 'require', '__folder', '__url', 'stryMutAct_9fa48', 'stryCov_9fa48'], { filename: file }) as Compiled;
    this.#compiled.set(file, made);
    return made;
  }
}
