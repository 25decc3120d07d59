// A copy of the samples to work in, and what lies beside it and must not be read.
import { cp, mkdir, readFile, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { repository } from '../host/paths.js';
import { run } from '../host/process.js';
import { tempFolder } from '../host/temp.js';

export interface Workspace {
  readonly dir: string;
  readonly read: (name: string) => Promise<string>;
  readonly write: (name: string, text: string) => Promise<void>;
  readonly writeBytes: (name: string, bytes: Uint8Array) => Promise<void>;
  readonly remove: () => Promise<void>;
}

export async function copySamples(): Promise<Workspace> {
  const temp = tempFolder('suite');
  const dir = path.join(temp.dir, 'samples');
  await cp(path.join(repository, 'samples'), dir, { recursive: true });
  const beside = path.join(temp.dir, 'beside');
  await mkdir(beside);
  await writeFile(path.join(beside, 'shop.yard'), await readFile(path.join(dir, 'shop.yard'), 'utf8'));
  await symlink(path.join(beside, 'shop.yard'), path.join(dir, 'leads-out.yard'));
  // A repository with the samples committed, for old versions beside the files.
  const git = (...args: string[]): Promise<void> => run('git', ['-c', 'user.name=Test', '-c', 'user.email=test@example.invalid', ...args], { cwd: dir });
  await git('init', '--quiet');
  await git('add', '.');
  await git('commit', '--quiet', '-m', 'Samples');
  return { dir, read: (name) => readFile(path.join(dir, name), 'utf8'), write: (name, text) => writeFile(path.join(dir, name), text), writeBytes: (name, bytes) => writeFile(path.join(dir, name), bytes), remove: () => temp.remove() };
}
