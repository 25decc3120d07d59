/**
 * Where a path written in a file leads, as a slash path, or undefined where it is not a plain relative path or
 * leads out of the root. Works on paths alone; whoever reads the file must also refuse links that lead out.
 */
export function resolveWithin(root: string, fromFile: string, path: string): string | undefined {
  if (path === '' || path.length > 1000 || /^[/\\]|^[a-z][a-z0-9+.-]*:|\\|[\u0000-\u001f]/i.test(path)) return undefined;
  const base = root.replace(/(?<!\/)\/+$/, '');
  if (!fromFile.startsWith(`${base}/`)) return undefined;
  const steps = fromFile.slice(base.length + 1).split('/').slice(0, -1);
  for (const step of path.split('/')) {
    if (step === '' || step === '.') continue;
    if (step === '..') {
      if (steps.pop() === undefined) return undefined;
    } else steps.push(step);
  }
  return steps.length === 0 ? undefined : `${base}/${steps.join('/')}`;
}
