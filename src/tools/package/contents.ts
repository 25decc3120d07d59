// What goes into the two packages, file by file. Nothing else does.

/** Where a file comes from: the repository, the folder that was built into, or the making of the package. */
type Source = { readonly from: 'repository' | 'built'; readonly file: string } | { readonly from: 'made'; readonly what: 'manifest' | 'notices' | 'bill' };

export interface Contents {
  /** By path in the package. */
  readonly files: Readonly<Record<string, Source>>;
  /** The bundles in it, as paths in the folder that was built into. */
  readonly bundles: readonly string[];
}

const repository = (file: string): Source => ({ from: 'repository', file });
const built = (file: string): Source => ({ from: 'built', file });
const common: Contents['files'] = {
  'package.json': { from: 'made', what: 'manifest' },
  'README.md': repository('README.md'),
  'CHANGELOG.md': repository('CHANGELOG.md'),
  'LICENSE': repository('LICENSE'),
  'THIRD-PARTY-NOTICES.txt': { from: 'made', what: 'notices' },
  'bom.cdx.json': { from: 'made', what: 'bill' },
  'schemas/manual.md': repository('schemas/manual.md'),
};

/** The extension. The pictures of the README are not in it: an editor shows none from a package (their address is taken out). */
export const EXTENSION: Contents = {
  files: {
    ...common,
    'dist/extension.js': built('extension.js'),
    'dist/web/extension.js': built('web/extension.js'),
    'dist/page.js': built('page.js'),
    'dist/page.css': built('page.css'),
    'schemas/steelyard.tmLanguage.json': repository('schemas/steelyard.tmLanguage.json'),
    'schemas/language-configuration.json': repository('schemas/language-configuration.json'),
    'samples/walkthrough.md': repository('samples/walkthrough.md'),
  },
  bundles: ['extension.js', 'web/extension.js', 'page.js', 'page.css'],
};

const schemas = ['estimate', 'weigh', 'check', 'changes', 'list', 'closing', 'history', 'records'].map((name) => `schemas/${name}.schema.json`);

/** The terminal tool: one script, and the forms of what it prints. */
export const TERMINAL_TOOL: Contents = {
  files: {
    ...common,
    'dist/cli.js': built('cli.js'),
    'schemas/steelyard.ebnf': repository('schemas/steelyard.ebnf'),
    ...Object.fromEntries(schemas.map((file) => [file, repository(file)])),
  },
  bundles: ['cli.js'],
};
