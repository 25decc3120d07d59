import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { ATTRIBUTE, withAttribute, withoutAttribute } from '../../../src/cli/git/attributes.js';
import { builtTool, inPassingFolder, job, Repository, shop } from './repository.js';

const { folder } = inPassingFolder();
builtTool(folder);
let made = 0;
let repository: Repository;

beforeEach(() => {
  repository = Repository.at(path.join(folder(), `${++made} of "mine"`), { 'shop.yard': shop, 'job.yard': job });
  repository.commit();
});

function turn(to: 'on' | 'off', below = ''): string {
  const { code, out, err } = repository.steelyard(['git', 'totals', to], { below });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return out;
}

/** Lines of a diff that came or went. */
function moved(diff: string): string[] {
  return diff.split('\n').filter((line) => /^[-+](?![-+])/.test(line));
}

const head = '# Totals in USD, with shop.yard as it is now; worked out by Steelyard, no part of the file:';
const mend = (total: string) => `#   mend            ${total.padStart(11)}  in all ${total.padStart(11)}     2.0 h    1 d  ready 2026-11-30  cheapest in all`;

describe('git shows totals', () => {
  test('in diff, show and log -p, and nothing else has changed', () => {
    turn('on');
    repository.commit('Set up');
    repository.edit('job.yard', '80.00', '95.50');
    const lines = ['-  part      "Pump"  80.00 new', '+  part      "Pump"  95.50 new', `-${mend('280.00')}`, `+${mend('295.50')}`];
    const diff = repository.git('diff');
    expect(moved(diff)).toEqual(lines);
    expect(diff).toContain(` ${head}`);
    expect(moved(repository.git('diff', '--no-textconv'))).toEqual(lines.slice(0, 2));
    repository.commit('Dearer pump');
    expect(moved(repository.git('show', '--format=%s'))).toEqual(lines);
    expect(moved(repository.git('log', '-p', '-1', '--format=%s'))).toEqual(lines);
    // What git keeps, hands on as a patch or gives as a file is the text alone.
    expect(repository.git('show', 'HEAD:job.yard')).toBe(repository.read('job.yard'));
    expect(moved(repository.git('format-patch', '--stdout', '-1'))).toEqual(lines.slice(0, 2));
  });

  test('from a folder below, of a file in another, with odd names, old and new versions by the same shop’s file', () => {
    repository.write('a b/-x\'"$(touch ran)`touch ran`.yard', job.replace('shop.yard', '../shop.yard'));
    repository.commit();
    turn('on', 'a b');
    repository.edit('a b/-x\'"$(touch ran)`touch ran`.yard', '80.00', '90.00');
    repository.edit('shop.yard', '100.00 usual', '200.00 usual');
    const diff = new Repository(path.join(repository.folder, 'a b')).git('diff', '.');
    expect(moved(diff).slice(2)).toEqual([`-${mend('480.00')}`, `+${mend('490.00')}`]);
    expect(existsSync(path.join(repository.folder, 'ran')) || existsSync(path.join(repository.folder, 'a b', 'ran'))).toBe(false);
    // The shop's own file has no options, so nothing is put below it.
    expect(moved(repository.git('diff', 'shop.yard'))).toEqual(['-  rate mechanical "Mechanical"  100.00 usual', '+  rate mechanical "Mechanical"  200.00 usual']);
  });

  test('each hunk is headed by the option, or other line at the left edge, that it stands in', () => {
    repository.edit('job.yard', '  warranty  12 mo\n', '  warranty  12 mo\n  leaves out  "Belt"\n  leaves out  "Hoses"\n  leaves out  "Thermostat"\n');
    repository.write('job.yard', repository.read('job.yard') + ['third', 'fourth', 'fifth', 'sixth'].map((name) => `\noption ${name} "Another way"\n  do  swap\n`).join(''));
    repository.commit();
    turn('on');
    repository.edit('job.yard', '80.00', '81.00');
    repository.edit('job.yard', 'option sixth "Another way"\n  do  swap', 'option sixth "Another way"\n  do  pump');
    expect([...repository.git('diff').matchAll(/^@@ .* @@ (.*)$/gm)].map(([, heading]) => heading)).toEqual(['option mend "Replace the pump"', 'option fifth "Another way"']);
    repository.edit('job.yard', '81.00', '80.00');
    expect([...repository.git('diff', '-U0').matchAll(/^@@ .* @@ (.*)$/gm)].map(([, heading]) => heading)).toEqual(['option sixth "Another way"', head.slice(0, 80), head.slice(0, 80)]);
  });

  test('also in a linked work tree', () => {
    turn('on');
    repository.commit();
    const linked = new Repository(`${repository.folder} linked`);
    repository.git('worktree', 'add', '--quiet', '-b', 'linked', linked.folder);
    linked.edit('job.yard', '80.00', '81.00');
    expect(moved(linked.git('diff')).slice(2)).toEqual([`-${mend('280.00')}`, `+${mend('281.00')}`]);
  });

  test('a renamed estimate keeps its totals', () => {
    turn('on');
    repository.commit();
    repository.git('mv', 'job.yard', 'E-7.yard');
    repository.edit('E-7.yard', '80.00', '81.00');
    repository.commit();
    expect(moved(repository.git('show', '-M')).slice(2)).toEqual([`-${mend('280.00')}`, `+${mend('281.00')}`]);
  });

  test('where each job has a folder of its own and all have one shop, old versions have totals too', () => {
    for (let i = 0; i < 60; i++) repository.write(`jobs/E-${i}/job.yard`, job.replace('shop.yard', '../../shop.yard').replace('80.00', `${i + 1}.00`));
    repository.git('rm', '--quiet', 'job.yard');
    turn('on');
    repository.commit();
    repository.edit('jobs/E-7/job.yard', '8.00 new', '9.00 new');
    repository.commit();
    expect(moved(repository.git('show')).slice(2)).toEqual([`-${mend('208.00')}`, `+${mend('209.00')}`]);
  });

  test('it says so where they are not known, and shows the text as it is', () => {
    turn('on');
    repository.edit('job.yard', 'use "shop.yard"', 'use "gone.yard"');
    repository.commit();
    repository.edit('job.yard', 'use "gone.yard"', 'use "shop.yard"');
    expect(moved(repository.git('diff')).filter((line) => line.startsWith('-'))).toEqual(['-use "gone.yard"', '-# Totals are not known here: the files that this version uses are not where it says, or not there any more.']);
    repository.write('north/job.yard', job.replace('80.00', '60.00'));
    repository.write('north/shop.yard', shop.replace('100.00', '90.00'));
    repository.commit();
    repository.edit('north/job.yard', '60.00', '61.00');
    expect(moved(repository.git('diff'))).toContain('-# Totals are not known here: files of this name are in several folders that use different shared files.');
  });

  test('options that rest on a line that can’t be read say so; a file that says nothing stays as it is', () => {
    turn('on');
    repository.edit('job.yard', '80.00', '1,080.00');
    expect(repository.git('diff')).toMatch(/^\+# {3}mend .* {2}incomplete: a line of it can’t be read$/m);
    repository.write('job.yard', '}}{{ no estimate\u0000 at all');
    expect(repository.git('diff', '--text')).toContain('+}}{{ no estimate');
    writeFileSync(path.join(repository.folder, 'job.yard'), Buffer.from([0x61, 0xe9, 0x0a]));
    expect(repository.tryGit('diff')).toMatchObject({ code: 0, out: expect.stringContaining('-steelyard 1\n') as string });
  });

  test('where a line end came or went at the end of the file, that is still to be seen', () => {
    turn('on');
    repository.write('job.yard', job.trimEnd());
    expect(moved(repository.git('diff'))).toEqual(['+# The last line of the file has no line end.']);
  });

  test('the tool has gone: git shows the text as it is', () => {
    turn('on');
    repository.edit('job.yard', '80.00', '81.00');
    const at = path.join(folder(), 'the shop’s "tool" isn\'t far');
    renameSync(at, `${at} any more`);
    const diff = repository.tryGit('diff');
    renameSync(`${at} any more`, at);
    expect({ code: diff.code, err: diff.err, lines: moved(diff.out).length }).toEqual({ code: 0, err: '', lines: 2 });
  });

  test('an editor that asks for the text of a version is given that text', () => {
    turn('on');
    repository.commit();
    expect(repository.git('show', '--textconv', 'HEAD:job.yard')).toContain(head);
    vi.stubEnv('VSCODE_GIT_COMMAND', 'show');
    const given = repository.git('show', '--textconv', 'HEAD:job.yard');
    vi.stubEnv('VSCODE_GIT_COMMAND', undefined);
    expect(given).toBe(job);
  });
});

describe('setting it up and taking it away', () => {
  const state = () => ({ config: repository.read('.git/config'), attributes: existsSync(path.join(repository.folder, '.gitattributes')) ? readFileSync(path.join(repository.folder, '.gitattributes'), 'latin1') : undefined });

  test.each([
    ['no attributes', undefined],
    ['an empty file', ''],
    ['lines of others, no line end', '* text=auto\n*.png binary'],
    ['lines of others with their own ends', '# Ours\r\n* text=auto\r\n'],
    ['a mark of UTF-8, and bytes that are none', '\u00ef\u00bb\u00bf*.p\u00ff text\n'],
  ])('%s: twice is once, and off restores', (_, attributes) => {
    if (attributes !== undefined) writeFileSync(path.join(repository.folder, '.gitattributes'), attributes, 'latin1');
    repository.git('config', 'diff.steelyard.wordRegex', '[a-z]+');
    const before = state();
    expect(turn('on')).toContain('from now on');
    const on = state();
    expect(turn('on')).toContain('already; nothing was changed');
    expect(state()).toEqual(on);
    expect(repository.steelyard(['git']).out).toContain('Totals in git diff, git log -p and git show: on.');
    turn('off');
    // An empty file says no more than none.
    expect(state()).toEqual({ ...before, attributes: before.attributes === '' ? undefined : before.attributes });
    expect(turn('off')).toContain('already; nothing was changed');
  });

  test('says where other lines have the last word, and half a set-up', () => {
    repository.write('.gitattributes', '*.yard -diff\n');
    expect(turn('on')).toContain('But other lines in .gitattributes say otherwise');
    expect(repository.steelyard(['git']).out).toContain('half set up');
    rmSync(path.join(repository.folder, '.gitattributes'));
    turn('on');
    repository.git('config', 'diff.steelyard.textconv', 'cat');
    expect(repository.steelyard(['git']).out).toContain('by another copy of Steelyard');
    expect(turn('on')).toContain('diff.steelyard.textconv was brought up to date');
  });

  test('a link in the place of .gitattributes is not written through', () => {
    mkdirSync(path.join(folder(), 'elsewhere'), { recursive: true });
    const target = path.join(folder(), 'elsewhere', `attributes-${made}`);
    writeFileSync(target, '');
    symlinkSync(target, path.join(repository.folder, '.gitattributes'));
    const { code, err } = repository.steelyard(['git', 'totals', 'on']);
    expect([code, readFileSync(target, 'utf8')]).toEqual([2, '']);
    expect(err).toContain('.gitattributes is a link or a folder');
    expect(repository.read('.git/config')).not.toContain('steelyard');
  });

  test('whatever stands in .gitattributes comes back byte for byte', () => {
    const bytes = fc.array(fc.constantFrom('* text', '*.yard', 'diff=steelyard', ' ', '\t', '\n', '\r\n', '#', '\u00ef\u00bb\u00bf', '\u00ff', '\u0000')).map((parts) => parts.join(''));
    fc.assert(fc.property(bytes.filter((text) => withoutAttribute(text) === text), (text) => {
      const on = withAttribute(text);
      expect(on).not.toBe(text);
      expect(on).toContain(ATTRIBUTE);
      expect(withAttribute(on)).toBe(on);
      expect(withoutAttribute(on)).toBe(text);
    }));
  });
});
