type Manifest = Readonly<Record<string, unknown>>;

/** What an editor reads of the repository's manifest. The rest is for those who build it. */
export function extensionManifest(manifest: Manifest): Manifest {
  const builders = ['private', 'dependencies', 'devDependencies', 'scripts', 'bin', 'files'];
  const { vscode } = manifest['engines'] as Readonly<Record<string, string>>;
  return { ...Object.fromEntries(Object.entries(manifest).filter(([key]) => !builders.includes(key))), engines: { vscode } };
}

/** The manifest of the terminal tool: all it needs is inside its one script, so it depends on nothing. */
export function terminalManifest(manifest: Manifest): Manifest {
  const { name, version, license, bin, engines } = manifest as Manifest & { readonly engines: Readonly<Record<string, string>> };
  return { name, version, description: 'Weigh the ways out of a failed engine in the terminal: estimates as text, checked and priced, side by side.', license, bin, engines: { node: engines['node'] } };
}
