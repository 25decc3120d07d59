import { createRequire } from 'node:module';
import path from 'node:path';
import { build } from 'esbuild';

const root = path.resolve(import.meta.dirname, '../..');

/**
 * A file of the editor room as it is shipped, with something else in the place of `vscode`: what a test gives it. For
 * what can be seen without an editor; all else is in test/editor.
 */
export async function editorModule<T>(file: string, vscode: object): Promise<T> {
  const { outputFiles } = await build({ entryPoints: [path.join(root, 'src/editor', file)], bundle: true, write: false, platform: 'node', format: 'cjs', external: ['vscode'], logLevel: 'error' });
  const module = { exports: {} as T };
  const own = createRequire(import.meta.url);
  // eslint-disable-next-line @typescript-eslint/no-implied-eval -- the product's own file, bundled above
  const load = new Function('module', 'exports', 'require', outputFiles[0]?.text ?? '') as (module: object, exports: object, require: (name: string) => unknown) => void;
  load(module, module.exports as object, (name) => (name === 'vscode' ? vscode : own(name) as unknown));
  return module.exports;
}
