// What the in-host tests of the language features share. Works where there is no Node, too.
import * as vscode from 'vscode';
import { createLanguageService, resolveWithin, type LanguageService } from '../../../src/service/index.js';

const patience = 15_000;
export const inWorkspace = (name: string): vscode.Uri => vscode.Uri.joinPath((vscode.workspace.workspaceFolders?.[0] as vscode.WorkspaceFolder).uri, name);
export const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** @param what is waited for; where it can tell more at the end than at the start, it is asked then. */
export async function until<T>(what: string | (() => string), look: () => T | undefined | Promise<T | undefined>): Promise<T> {
  for (const end = Date.now() + patience; Date.now() < end; await wait(30)) {
    const found = await look();
    if (found !== undefined) return found;
  }
  throw new Error(`Waited in vain for ${typeof what === 'string' ? what : what()}.`);
}

/** Opening an estimate makes the extension active, but a test that asks at once might come too early. */
export const active = (): Promise<unknown> => Promise.resolve(vscode.extensions.getExtension('steelyard.steelyard')?.activate());

/** Asks what the editor itself would ask. */
export const ask = <T>(command: string, ...args: unknown[]): Promise<T> => Promise.resolve(vscode.commands.executeCommand<T>(`vscode.${command}`, ...args));

export async function write(name: string, text: string): Promise<vscode.Uri> {
  const uri = inWorkspace(name);
  await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(text));
  return uri;
}

export const onDisk = async (name: string): Promise<string> => new TextDecoder().decode(await vscode.workspace.fs.readFile(inWorkspace(name)));

/** Opened as a user opens it: a document that a program opens is kept for minutes after its editor is closed. */
export async function open(name: string, viewColumn = vscode.ViewColumn.One): Promise<vscode.TextDocument> {
  const uri = inWorkspace(name);
  await vscode.commands.executeCommand('vscode.open', uri, { preview: false, viewColumn });
  return await until(`an editor of ${name}`, () => {
    const document = vscode.window.activeTextEditor?.document;
    return document?.uri.toString() === uri.toString() ? document : undefined;
  });
}

export async function closeAll(): Promise<void> {
  await vscode.commands.executeCommand('workbench.action.files.revert');
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
}

/** Runs of spaces as one: how far apart the columns of the samples stand is another test's matter. */
export const squeeze = (text: string): string => text.replace(/ +/g, ' ').trim();

/** Where a piece of text is that occurs once, whatever its columns, and the place in it that a bar marks. */
function find(document: vscode.TextDocument, marked: string): { readonly range: vscode.Range; readonly at: vscode.Position } {
  const written = (piece: string): string => piece.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/ +/g, ' +');
  const [before = '', after = ''] = marked.split('|');
  const found = [...document.getText().matchAll(new RegExp(`(${written(before)})${written(after)}`, 'g'))];
  const [one] = found;
  if (one === undefined || found.length > 1) throw new Error(`“${marked}” occurs ${found.length} times in ${document.uri.path}.`);
  const range = new vscode.Range(document.positionAt(one.index), document.positionAt(one.index + one[0].length));
  return { range, at: document.positionAt(one.index + (marked.includes('|') ? (one[1] ?? '').length : 0)) };
}

export const at = (document: vscode.TextDocument, marked: string): vscode.Position => find(document, marked).at;

export async function replace(document: vscode.TextDocument, piece: string, by: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, find(document, piece).range, by);
  await vscode.workspace.applyEdit(edit);
}

export async function applyTo(document: vscode.TextDocument, edits: readonly vscode.TextEdit[]): Promise<string> {
  const edit = new vscode.WorkspaceEdit();
  edit.set(document.uri, [...edits]);
  await vscode.workspace.applyEdit(edit);
  return document.getText();
}

export const codeOf = ({ code }: vscode.Diagnostic): string => (typeof code === 'object' ? String(code.value) : String(code ?? ''));
export const problemsOf = (uri: vscode.Uri): vscode.Diagnostic[] => vscode.languages.getDiagnostics(uri).filter(({ source }) => source === 'Steelyard');
export const codes = (uri: vscode.Uri): string[] => problemsOf(uri).map(codeOf);
export const problem = (uri: vscode.Uri, code: string): Promise<vscode.Diagnostic> => until(() => `${code} in ${uri.path}, which has ${codes(uri).join(', ')}`, () => problemsOf(uri).find((one) => codeOf(one) === code));
export const gone = (uri: vscode.Uri, code: string): Promise<true> => until(`no ${code} in ${uri.path}`, () => (codes(uri).includes(code) ? undefined : (true as const)));

export const everything = (document: vscode.TextDocument): vscode.Range => new vscode.Range(0, 0, document.lineCount, 0);
export const nameOf = (uri: vscode.Uri): string => uri.path.slice(uri.path.lastIndexOf('/') + 1);

/** The same service over texts in memory: what the editor should come to. */
export function serviceOver(texts: Readonly<Record<string, string>>): LanguageService {
  return createLanguageService({
    read: (uri) => {
      const text = texts[uri.slice(1)];
      return text === undefined ? 'missing' : { text };
    },
    resolvePath: (from, written) => resolveWithin('/', from, written),
  });
}

/** The reason that the editor was given for not doing what it was asked. */
export async function refusal(asked: Promise<unknown>): Promise<string> {
  try {
    await asked;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
  throw new Error('It was not refused.');
}
