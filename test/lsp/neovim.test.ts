import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildTool, removeFolder, root, sampleFolder } from './client.js';

const installed = spawnSync('nvim', ['--version']).status === 0;

const session = (folder: string) => `
local said = {}
local ok, wrong = pcall(function()
  vim.cmd('edit ' .. vim.fn.fnameescape('${folder}/pilgrim-v6.yard'))
  local function ready()
    for _, client in pairs(vim.lsp.get_active_clients()) do if client.initialized then return true end end
  end
  vim.wait(30000, ready, 20)
  local function ask(method, params)
    for _, answer in pairs(vim.lsp.buf_request_sync(0, method, params, 30000) or {}) do return answer.result end
  end
  vim.fn.cursor(vim.fn.search('labour rear-head'), 10)
  said.filetype = vim.bo.filetype
  said.hover = ask('textDocument/hover', vim.lsp.util.make_position_params()).contents.value
  vim.fn.cursor(vim.fn.search('do  *diagnosis, rear-head'), 16)
  vim.lsp.buf.definition()
  vim.wait(30000, function() return vim.fn.expand('%:t') == 'shop.yard' end, 20)
  said.line = vim.fn.getline('.')
  said.clients = #vim.lsp.get_active_clients()
  vim.fn.setline(vim.fn.search('workday'), '  wrokday 8 h')
  vim.wait(30000, function() return #vim.diagnostic.get(0) > 0 end, 20)
  said.problem = vim.diagnostic.get(0)[1].message
end)
if not ok then said.wrong = tostring(wrong) end
vim.fn.writefile({ vim.fn.json_encode(said) }, '${folder}/said.json')
vim.cmd('qa!')
`;

/** The configuration of samples/other-editors.md, as it stands there. */
describe.skipIf(!installed)('Neovim with its own client', () => {
  let folder: string;
  beforeAll(async () => {
    folder = sampleFolder();
    const page = readFileSync(path.join(root, 'samples/other-editors.md'), 'utf8');
    writeFileSync(path.join(folder, 'init.lua'), /^```lua\n([^]*?)^```$/m.exec(page)?.[1] ?? '');
    writeFileSync(path.join(folder, 'session.lua'), session(folder));
    mkdirSync(path.join(folder, 'bin'));
    const program = await buildTool(folder);
    writeFileSync(path.join(folder, 'bin/steelyard'), `#!/bin/sh\nexec "${process.execPath}" "${program}" "$@"\n`);
    chmodSync(path.join(folder, 'bin/steelyard'), 0o755);
  }, 120_000);
  afterAll(() => removeFolder(folder));

  test('knows the files, tells figures, leads into the shop file and shows problems', () => {
    spawnSync('nvim', ['--headless', '-u', path.join(folder, 'init.lua'), '-c', `luafile ${path.join(folder, 'session.lua').replaceAll(' ', '\\ ')}`], {
      timeout: 100_000, env: { ...process.env, PATH: `${path.join(folder, 'bin')}:${process.env['PATH'] ?? ''}` },
    });
    const said = JSON.parse(readFileSync(path.join(folder, 'said.json'), 'utf8')) as Record<string, string | number>;
    expect(said).toMatchObject({ filetype: 'steelyard', clients: 1, hover: expect.stringContaining('1,452.00') as string, line: expect.stringMatching(/^labour diagnosis/) as string });
    expect(said['problem']).toContain('Did you mean workday?');
    expect(said).not.toHaveProperty('wrong');
  }, 120_000);
});
