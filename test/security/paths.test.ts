import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Workspace } from '../../src/cli/lsp/workspace.js';
import { run } from '../../src/cli/run.js';
import type { LeadsOut } from '../../src/editor/links.js';
import { createLanguageService, resolveWithin } from '../../src/service/index.js';
import { editorModule } from './editor-modules.js';

// Paths on their own are in test/estimate/files.test.ts; here they are written into estimates, beside real files.

/** Stands in files that no estimate of the workspace may read; if it is ever said, something leads out. */
const SECRET = 'swordfish-4711';

let folder: string;
let work: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'steelyard-paths-'));
  work = path.join(folder, 'work');
  mkdirSync(path.join(work, 'jobs'), { recursive: true });
  mkdirSync(path.join(folder, 'work2'));
  const secret = `steelyard 1\nshop "${SECRET}"\nlabour secret "${SECRET}" 4711 h\nnote "${SECRET}\n`;
  for (const file of ['secret.yard', 'work2/secret.yard']) writeFileSync(path.join(folder, file), secret);
  // A picture by its first bytes (ISO/IEC 15948), with the word behind them.
  writeFileSync(path.join(folder, 'secret.png'), Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), Buffer.from(SECRET)]));
  writeFileSync(path.join(work, 'inside.yard'), 'steelyard 1\nshop "Inside"\n');
  symlinkSync('../secret.yard', path.join(work, 'link.yard'));
  symlinkSync('../secret.png', path.join(work, 'link.png'));
  symlinkSync('..', path.join(work, 'up'));
  symlinkSync('link.yard', path.join(work, 'chain.yard'));
  symlinkSync(path.join(folder, 'work2'), path.join(work, 'beside'));
  symlinkSync('inside.yard', path.join(work, 'good.yard'));
  symlinkSync('loop.yard', path.join(work, 'loop.yard'));
  symlinkSync('/proc/self/environ', path.join(work, 'environ.yard'));
  symlinkSync('/dev/zero', path.join(work, 'zero.yard'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function steelyard(...args: readonly string[]) {
  let said = '';
  const code = run(args, '1.2.3', { cwd: work, styled: false, stdin: () => '', out: (text) => void (said += text), err: (text) => void (said += text) });
  return { code, said };
}

/** Ways out, of the kind that file systems, browsers, shells and other systems know; from memory. */
const WAYS_OUT = (name: string): readonly string[] => [
  `../${name}`, `../../${path.basename(path.dirname(path.join('/x', name)))}${name}`, `./../${name}`, `jobs/../../${name}`, `jobs/./.././../${name}`, `jobs//..//../${name}`, `../work/../${name}`, `../WORK/../${name}`, `../work2/${name}`,
  `up/${name}`, `up/work2/${name}`, `beside/${name}`, `up/work/up/${name}`, `link${path.extname(name)}`,
  `..\\${name}`, `jobs\\..\\..\\${name}`, `\\\\server\\share\\${name}`, `//server/share/${name}`, `\\\\?\\C:\\${name}`, `//?/C:/${name}`, `\\\\.\\pipe\\${name}`, `C:/${name}`, `C:\\${name}`, `c:${name}`, `C:..\\${name}`,
  `file:///${name}`, `FILE:///${name}`, `file:../${name}`, `https://example.invalid/${name}`, `vscode-remote://x/${name}`, `data:text/plain,x.${name}`, `javascript:x.${name}`,
  `%2e%2e/${name}`, `..%2f${name}`, `%2e%2e%2f${name}`, `..%5c${name}`, `%252e%252e/${name}`, `..%c0%af${name}`, `.%00./${name}`, `．．/${name}`, `..／${name}`, `․․/${name}`, `..∕${name}`, `.\u200b./${name}`,
  `../${name}\u0000.yard`, `inside.yard\u0000/../../${name}`, `..\u0000/${name}`, ` ../${name}`, `.. /${name}`, `.. ./${name}`, `..;/${name}`, `.../${name}`, `....//${name}`, `~/${name}`, `$HOME/${name}`, `%USERPROFILE%/${name}`, '$(cat ../secret.yard)', '`cat ../secret.yard`', `../*`, `../{secret,x}.yard`,
  `${'../'.repeat(300)}etc/passwd`, `${'a/../'.repeat(150)}../${name}`, `${'x/'.repeat(600)}${name}`, 'x'.repeat(1_500), '/etc/passwd', '/proc/self/environ', 'environ.yard', 'zero.yard', 'loop.yard', 'chain.yard', 'CON', 'NUL', 'nul.yard', 'aux.yard:x', '.git/config', 'jobs', '.', '..', '/', '', '../',
];
const quoted = (text: string): string => `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;

describe('what an estimate names', () => {
  test.each(WAYS_OUT('secret.yard').map((written) => [JSON.stringify(written).slice(0, 50), written] as const))('as a shared file, %s leads to nothing outside', (_, written) => {
    for (const [i, from] of ['job.yard', 'jobs/job.yard'].entries()) {
      writeFileSync(path.join(work, from), `steelyard 1\nuse ${quoted(i === 0 ? written : `../${written}`)}\noption one "One"\n  do secret\n`);
      for (const args of [['check', from], ['check', from, '--as', 'json'], ['weigh', from, '--json'], ['records', from], ['list', '.']]) {
        const { code, said } = steelyard(...args);
        expect(said, args.join(' ')).not.toMatch(new RegExp(`${SECRET}|root:|PATH=`));
        expect([1, 2], args.join(' ')).toContain(code);
      }
    }
  });

  test.each(WAYS_OUT('secret.png').map((written) => [JSON.stringify(written).slice(0, 50), written] as const))('as a picture, %s brings nothing from outside into the quote', (_, written) => {
    writeFileSync(path.join(work, 'job.yard'), `steelyard 1\nfinding a "A"\n  picture ${quoted(written)}\noption one "One"\n  because a\n  part "P" 5.00 new\n`);
    for (const as of ['html', 'markdown', 'text']) {
      const { said } = steelyard('quote', 'job.yard', '--as', as);
      expect(said).toMatch(/5\\?\.00/);
      expect(said).not.toContain('<img');
      for (const base64 of [0, 1, 2].map((shift) => Buffer.from(' '.repeat(shift) + SECRET).toString('base64').slice(shift === 0 ? 0 : 4, -4))) expect(said).not.toContain(base64);
    }
  });

  test('the pictures and files that are inside are found, also by a link that stays inside', () => {
    writeFileSync(path.join(work, 'inside.png'), readFileSync(path.join(folder, 'secret.png')));
    symlinkSync('inside.png', path.join(work, 'good.png'));
    writeFileSync(path.join(work, 'job.yard'), 'steelyard 1\nuse "good.yard"\nfinding a "A"\n  picture "good.png"\noption one "One"\n  because a\n  part "P" 5.00 new\n');
    expect(steelyard('quote', 'job.yard', '--as', 'html').said).toContain('<img');
    expect(steelyard('records', 'job.yard').said).toContain('"Inside"');
    rmSync(path.join(work, 'good.png'));
  });
});

test('in a language server the same ways lead nowhere', () => {
  const workspace = new Workspace({ get: () => undefined });
  workspace.setRoots([pathToFileURL(work).href]);
  const service = createLanguageService(workspace.host);
  for (const written of WAYS_OUT('secret.yard')) {
    writeFileSync(path.join(work, 'job.yard'), `steelyard 1\nuse ${quoted(written)}\n`);
    workspace.readAgain();
    const uri = pathToFileURL(path.join(work, 'job.yard')).href;
    expect(service.allDiagnostics(uri).get(uri)?.length ?? 0, written).toBeGreaterThan(0);
    expect(JSON.stringify(service.weighing(uri).resolved.records.map(({ title }) => title?.text)), written).not.toContain(SECRET);
    expect(service.uses(uri).every((one) => one.startsWith(`${pathToFileURL(work).href}/`)), written).toBe(true);
  }
});

test('in the editor a link that leads out of the folder is found out on the disk', async () => {
  const { linksOnDiskLeadOut } = await editorModule<{ readonly linksOnDiskLeadOut: LeadsOut }>('links-on-disk.ts', {});
  const file = (...steps: readonly string[]) => ({ scheme: 'file', fsPath: path.join(work, ...steps), path: path.join(work, ...steps) }) as never;
  for (const out of [['link.yard'], ['chain.yard'], ['up', 'secret.yard'], ['beside', 'secret.yard'], ['environ.yard'], ['zero.yard']]) expect(await linksOnDiskLeadOut(file(), file(...out)), out.join('/')).toBe(true);
  for (const inside of [['good.yard'], ['inside.yard'], ['jobs', '..', 'inside.yard']]) expect(await linksOnDiskLeadOut(file(), file(...inside)), inside.join('/')).toBe(false);
  await expect(linksOnDiskLeadOut(file(), file('loop.yard'))).rejects.toThrow();
  await expect(linksOnDiskLeadOut(file(), file('none.yard'))).rejects.toThrow();
});

test('whatever steps a path has, it stays below the root or leads nowhere', () => {
  const steps = ['..', '.', '', 'a', '...', '.. ', '..\t', 'A', '%2e%2e', '..%2f', 'w'];
  for (let code = 0; code < steps.length ** 4; code++) {
    const written = [1, steps.length, steps.length ** 2, steps.length ** 3].map((by) => steps[Math.floor(code / by) % steps.length]).join('/');
    const leads = resolveWithin('/w', '/w/jobs/e.yard', written);
    if (leads === undefined) continue;
    if (!leads.startsWith('/w/') || path.posix.normalize(leads) !== leads) throw new Error(`${written} leads to ${leads}`);
  }
});
