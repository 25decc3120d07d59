import * as vscode from 'vscode';
import { moneyText } from '../report/index.js';
import { LARGEST_PICTURE, picturesWanted, quoteForm, quoteOf, type PictureFile, type PictureFiles } from '../report/quote/index.js';
import type { Decision } from '../weigh/index.js';
import type { Desk } from './desk.js';
import type { LeadsOut } from './links.js';
import { isEstimate, nameOf, rootOf } from './places.js';

/**
 * Writes the quote of one option as a page to print, where the user says. Works wherever files are read through the
 * editor; the browser is opened only when it is asked for.
 */
export async function writeQuote(of: vscode.Uri | undefined, desk: Desk, leadsOut: LeadsOut): Promise<vscode.Uri | undefined> {
  const uri = of ?? vscode.window.activeTextEditor?.document.uri;
  const document = vscode.workspace.textDocuments.find((one) => one.uri.toString() === uri?.toString());
  if (document === undefined || !isEstimate(document)) return undefined;
  const key = document.uri.toString();
  if (!(await desk.whole(key))) return undefined;
  const decision = desk.service.decision(key);
  const option = await pickOption(decision);
  if (option === undefined) return undefined;
  const defaultUri = proposed(document.uri, option);
  const target = await vscode.window.showSaveDialog({ title: 'Write the quote', saveLabel: 'Write', ...(defaultUri === undefined ? {} : { defaultUri }), filters: { 'Page to print': ['html'] } });
  if (target === undefined) return undefined;
  // Made from the text as it is now: it may have changed while questions were open.
  const fresh = (await desk.whole(key)) ? desk.service.decision(key) : decision;
  const made = quoteOf(fresh, option, await readPictures(fresh, leadsOut));
  if (made.kind !== 'quote') {
    void vscode.window.showWarningMessage('No quote was written: a line of this option can’t be read or priced.');
    return undefined;
  }
  try {
    await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(quoteForm(made.quote, 'html')));
  } catch (error) {
    void vscode.window.showErrorMessage(`The quote could not be written: ${error instanceof Error ? error.message : String(error)}`);
    return undefined;
  }
  const absent = made.quote.findings.flatMap(({ pictures }) => pictures.filter(({ kind }) => kind === 'absent'));
  void offerToOpen(target, absent.map(({ name }) => name));
  return target;
}

/** Options that are not whole are shown, and say why they can't be taken. */
async function pickOption({ comparison: { options, ranking, money } }: Decision): Promise<string | undefined> {
  const items = ranking.map(({ option, totals, ready }) => ({
    label: option.title,
    description: `${moneyText(totals.total.likely, money)} ${money.currency.code}`.trimEnd(),
    detail: [...(ranking[0]?.option === option ? ['costs least in all'] : []), ...(ready.date === undefined || ready.bay.likely.isZero() ? [] : [`ready ${ready.date}`])].join(', '),
    name: option.name,
  }));
  if (items.length === 0) {
    void vscode.window.showWarningMessage('There is no option to quote yet: none is whole.');
    return undefined;
  }
  const left = options.length - items.length;
  const placeHolder = left === 0 ? 'Which option is quoted?' : `Which option is quoted? ${left} not shown: ${left === 1 ? 'a line it rests on' : 'lines they rest on'} can’t be read or priced.`;
  return (await vscode.window.showQuickPick(items, { placeHolder }))?.name;
}

function proposed(estimate: vscode.Uri, option: string): vscode.Uri | undefined {
  const { root, file } = rootOf(estimate);
  if (estimate.scheme === 'untitled' && vscode.workspace.workspaceFolders === undefined) return undefined;
  const folder = root.with({ path: file.slice(0, file.lastIndexOf('/')) || '/' });
  return vscode.Uri.joinPath(folder, `${nameOf(estimate.toString()).replace(/\.yard$/i, '')}-${option}.html`);
}

/** The pictures of the findings. Their addresses lie in the workspace by their paths; links that lead out are not followed. */
async function readPictures({ comparison: { estimate } }: Decision, leadsOut: LeadsOut): Promise<PictureFiles> {
  return new Map(await Promise.all(picturesWanted(estimate.findings).map(async (key): Promise<[string, PictureFile]> => [key, await readPicture(vscode.Uri.parse(key, true), leadsOut).catch((): PictureFile => ({ kind: 'missing' }))])));
}

async function readPicture(uri: vscode.Uri, leadsOut: LeadsOut): Promise<PictureFile> {
  const { type, size } = await vscode.workspace.fs.stat(uri);
  if ((type & vscode.FileType.File) === 0) return { kind: 'missing' };
  if (await leadsOut(rootOf(uri).root, uri)) return { kind: 'outside' };
  return size > LARGEST_PICTURE ? { kind: 'too-large' } : { kind: 'read', bytes: await vscode.workspace.fs.readFile(uri) };
}

const OPEN = 'Open in the browser';

/** A browser can open what lies on this machine's disk; elsewhere the file is only named. */
async function offerToOpen(target: vscode.Uri, absent: readonly string[]): Promise<void> {
  const says = `Wrote ${nameOf(target.toString())}.${absent.length === 0 ? '' : ` Not in it, and said so in its place: ${absent.join(', ')}.`}`;
  const offers = target.scheme === 'file' && vscode.env.remoteName === undefined ? [OPEN] : [];
  if ((await vscode.window.showInformationMessage(says, ...offers)) === OPEN) await vscode.env.openExternal(target);
}
