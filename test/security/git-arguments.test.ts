import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { builtTool, inPassingFolder, job, Repository, shop } from '../cli/git/repository.js';

// Options and revisions that start with a dash are in test/cli/git/refusals.test.ts, as are a repository's own programs.

const { folder } = inPassingFolder();
builtTool(folder);
let repository: Repository;
let turn = 0;
beforeEach(() => {
  repository = Repository.at(path.join(folder(), `shop ${turn++}`), { 'shop.yard': shop });
});

/** Names of estimates that a shell, or git, would take for more than a name. */
const NAMES = ['-x.yard', '--output=owned', '--upload-pack=touch owned;.yard', '$(touch owned).yard', '`touch owned`.yard', 'a;touch owned;.yard', 'a&touch owned&.yard', "a'b.yard", 'a"b.yard', 'a\nb.yard', 'a b.yard', ':(glob)*.yard', ':!job.yard', ':^job.yard', '*.yard', '[a-z].yard', 'a\\b.yard', '@{u}.yard', '\u202eab.yard', 'é漢.yard'];

describe('a name is a name', () => {
  test.each(NAMES.map((name) => [JSON.stringify(name), name] as const))('%s', (_, name) => {
    repository.write(name, job);
    repository.write('other.yard', job.replace('80.00', '81.00'));
    repository.commit();
    repository.write(name, job.replace('80.00', '84.00'));
    repository.git('add', '--all');
    const said = [
      repository.steelyard(['changes', '--', name]),
      repository.steelyard(['changes', '--', `HEAD:${name}`, name]),
      repository.steelyard(['changes', '--', `:${name}`, `./${name}`]),
      repository.steelyard(['git', 'staged']),
      repository.steelyard(['git', 'text', '--', name]),
      repository.steelyard(['check', '--', name]),
    ];
    expect(said.map(({ code }) => code), said.map(({ err }) => err).join('')).toEqual([0, 0, 0, 0, 0, 0]);
    // Its own price, and not that of another file that a pattern would have meant.
    expect(said[0]?.out).toContain('4.00');
    expect(said[1]?.out).toContain('4.00');
    repository.git('commit', '--quiet', '--message', 'x');
    expect(readdirSync(repository.folder).filter((file) => file.startsWith('owned'))).toEqual([]);
    expect(existsSync(path.join(folder(), 'owned'))).toBe(false);
  });

  test('git calls the tool for it by its setting, with the same names', () => {
    expect(repository.steelyard(['git', 'totals', 'on']).code).toBe(0);
    expect(repository.steelyard(['git', 'check', 'on']).code).toBe(0);
    const usable = NAMES.filter((name) => name.endsWith('.yard'));
    for (const name of usable) repository.write(name, job);
    repository.commit();
    for (const name of usable) repository.write(name, job.replace('80.00', '84.00'));
    const diff = repository.git('-c', 'core.quotePath=false', 'diff');
    expect(diff.match(/^\+#   mend .*284\.00/gm)).toHaveLength(usable.length);
    for (const name of usable) repository.write(name, job.replace('80.00', '8O.00'));
    repository.git('add', '--all');
    const { code, err } = repository.tryGit('commit', '--message', 'x');
    expect(code).not.toBe(0);
    expect(err).toContain('The commit was stopped');
    expect(readdirSync(repository.folder).filter((file) => file.startsWith('owned'))).toEqual([]);
  });

  test.each(['--output=owned', '-x', '--help', '--exec=touch owned', '-c core.editor=x', '$(touch owned)', 'HEAD;touch owned', 'HEAD --output=owned', 'HEAD\n--output=owned', '@{-1}', 'refs/heads/../../config', '^HEAD', 'HEAD..', '', '-', '--', ':/^', 'HEAD^{/(a+)+$}', `HEAD${'^'.repeat(50_000)}`])('%j is a revision or none', (revision) => {
    repository.write('job.yard', job);
    repository.commit();
    for (const args of [['changes', 'job.yard', `--since=${revision}`], ['changes', '--', `${revision}:job.yard`, 'job.yard'], ['quote', 'job.yard', '--supplement', `--since=${revision}:job.yard`]]) {
      const { code, out, err } = repository.steelyard(args);
      expect([0, 2], err).toContain(code);
      expect(err).not.toMatch(/usage:|fatal:|\n {4}at /);
      if (code === 2) expect(out).toBe('');
    }
    expect(readdirSync(repository.folder).sort()).toEqual(['.git', 'job.yard', 'shop.yard']);
  });
});
