import { spawn, type ChildProcess } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import * as lsp from 'vscode-languageserver/node.js';

export const root = path.resolve(import.meta.dirname, '../..');

/** The terminal tool as one file, as it is shipped. */
export async function buildTool(folder: string): Promise<string> {
  const program = path.join(folder, 'cli.cjs');
  await build({ entryPoints: [path.join(root, 'src/cli/main.ts')], outfile: program, bundle: true, platform: 'node', format: 'cjs', logLevel: 'error' });
  return program;
}

/** A folder of its own with the samples in it. */
export function sampleFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'steelyard lsp '));
  cpSync(path.join(root, 'samples'), folder, { recursive: true });
  return folder;
}

/** A small editor: opens files, keeps what is published, answers what servers ask. */
export class Editor {
  readonly published = new Map<string, lsp.PublishDiagnosticsParams>();
  readonly asked: string[] = [];
  settings: unknown = null;
  private readonly versions = new Map<string, number>();
  private readonly texts = new Map<string, string>();

  private constructor(readonly folder: string, readonly server: ChildProcess, readonly connection: lsp.ProtocolConnection) {}

  static async start(program: string, folder: string, capabilities: lsp.ClientCapabilities, more: object = {}): Promise<Editor> {
    const server = spawn(process.execPath, [program, 'lsp', '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
    const connection = lsp.createProtocolConnection(new lsp.StreamMessageReader(server.stdout as NodeJS.ReadableStream), new lsp.StreamMessageWriter(server.stdin as NodeJS.WritableStream));
    const editor = new Editor(folder, server, connection);
    connection.onNotification('textDocument/publishDiagnostics', (params: lsp.PublishDiagnosticsParams) => void editor.published.set(params.uri, params));
    connection.onRequest('workspace/configuration', ({ items }: lsp.ConfigurationParams) => items.map(() => editor.settings));
    for (const method of ['client/registerCapability', 'workspace/inlayHint/refresh', 'workspace/codeLens/refresh', 'workspace/semanticTokens/refresh']) {
      connection.onRequest(method, () => {
        editor.asked.push(method);
        return null;
      });
    }
    connection.listen();
    await connection.sendRequest('initialize', { processId: process.pid, rootUri: null, capabilities, workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'samples' }], ...more });
    await connection.sendNotification('initialized', {});
    return editor;
  }

  uri(file: string): string {
    return pathToFileURL(path.join(this.folder, file)).href;
  }

  text(file: string): string {
    return this.texts.get(file) ?? readFileSync(path.join(this.folder, file), 'utf8');
  }

  async open(file: string, uri = this.uri(file)): Promise<void> {
    this.versions.set(file, 1);
    await this.connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'steelyard', version: 1, text: this.text(file) } });
  }

  /** Replaces a piece of text that stands in the file, by one incremental change. */
  async change(file: string, from: string, to: string): Promise<void> {
    const text = this.text(file);
    const start = this.position(file, from);
    const end = this.position(file, from, from.length);
    const version = (this.versions.get(file) ?? 1) + 1;
    this.versions.set(file, version);
    this.texts.set(file, text.replace(from, () => to));
    await this.connection.sendNotification('textDocument/didChange', { textDocument: { uri: this.uri(file), version }, contentChanges: [{ range: { start, end }, text: to }] });
  }

  async close(file: string, uri = this.uri(file)): Promise<void> {
    this.texts.delete(file);
    await this.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
  }

  /** Where a piece of text stands in a file, `into` characters behind its start. */
  position(file: string, text: string, into = 0): lsp.Position {
    const at = this.text(file).indexOf(text);
    if (at < 0) throw new Error(`${file} has no ${text}`);
    const before = this.text(file).slice(0, at + into).split('\n');
    return { line: before.length - 1, character: before[before.length - 1]?.length ?? 0 };
  }

  async ask<R>(method: string, file: string, params: object = {}): Promise<R> {
    return this.connection.sendRequest<R>(`textDocument/${method}`, { textDocument: { uri: this.uri(file) }, ...params });
  }

  /** Codes of the problems that are shown in a file; undefined where nothing was ever published. */
  codes(file: string, uri = this.uri(file)): (string | number | undefined)[] | undefined {
    return this.published.get(uri)?.diagnostics.map(({ code }) => code);
  }

  /** The same without advice, which a sample may have. */
  mends(file: string, uri = this.uri(file)): (string | number | undefined)[] | undefined {
    return this.published.get(uri)?.diagnostics.filter(({ severity }) => (severity ?? 1) <= lsp.DiagnosticSeverity.Warning).map(({ code }) => code);
  }

  /** The text of a file after edits of the server. */
  after(file: string, edits: readonly lsp.TextEdit[]): string {
    const text = this.text(file);
    const lines = text.split('\n');
    const offset = ({ line, character }: lsp.Position) => lines.slice(0, line).reduce((sum, one) => sum + one.length + 1, 0) + character;
    return [...edits].sort((a, b) => offset(b.range.start) - offset(a.range.start)).reduce((done, { range, newText }) => done.slice(0, offset(range.start)) + newText + done.slice(offset(range.end)), text);
  }

  async stop(): Promise<number | null> {
    await this.connection.sendRequest('shutdown');
    const ended = exitOf(this.server);
    await this.connection.sendNotification('exit');
    const code = await ended;
    this.connection.dispose();
    return code;
  }
}

export function exitOf(server: ChildProcess): Promise<number | null> {
  return new Promise((resolve) => void server.once('exit', resolve));
}

export function removeFolder(folder: string): void {
  rmSync(folder, { recursive: true });
}
