// Bundles a test entry for the extension host: one CommonJS file in which only `vscode` stays outside.
import path from 'node:path';
import { build } from 'esbuild';
import type { ExtensionKind } from './host.js';
import { repository } from './paths.js';

/** Returns the bundle's path below dist/editor-test/. */
export async function bundleSuite(entry: string, kind: ExtensionKind = 'node'): Promise<string> {
  const outfile = path.join(repository, 'dist', 'editor-test', `${path.basename(entry, '.ts')}.${kind}.js`);
  await build({
    entryPoints: [entry],
    outfile,
    bundle: true,
    format: 'cjs',
    platform: kind === 'web' ? 'browser' : 'node',
    target: 'es2022',
    external: ['vscode'],
    sourcemap: 'inline', // failures then name lines of the test's source
    logLevel: 'warning',
  });
  return outfile;
}
