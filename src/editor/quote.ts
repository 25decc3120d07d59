import * as vscode from 'vscode';
import type { Problem } from '../language/index.js';
import { moneyText, RULED_OUT, spokenAgainst, wordsOf } from '../report/index.js';
import {
  chosenIn, LARGEST_PICTURE, picturesWanted, quoteForm, quoteOf, sheetForm, stageQuoteOf, stageSheetOf, supplementOf, supplementSheetOf, type PictureFile, type PictureFiles,
} from '../report/quote/index.js';
import type { VersionRead } from '../weigh/changes/index.js';
import { authorisedIn, type Decision } from '../weigh/index.js';
import { asItems, asNotice } from './as-text.js';
import type { Version } from './changes/versions.js';
import type { Desk } from './desk.js';
import type { Guarded } from './guarded.js';
import { isEstimate, nameOf, rootOf } from './places.js';

/** What a customer is given: the quote of an option or of a stage before the decision, or what is new since it was authorised. */
type Wanted = { readonly kind: 'option' | 'stage' | 'supplement'; readonly name: string };

/** The version that was authorised, where somebody names it. */
type Since = Parameters<typeof supplementOf>[2];

/** A page, with the names of pictures that are not in it; or why there is none. */
type Made = { readonly page: string; readonly absent: readonly string[] } | { readonly why: string };

/** Asks which version was authorised; undefined where nobody says. */
export type AskVersion = (key: string) => Promise<Version | undefined>;

/**
 * Writes what a customer is given as a page to print, where the user says. Works wherever files are read through the
 * editor; the browser is opened only when it is asked for.
 */
export async function writeQuote(of: vscode.Uri | undefined, desk: Desk, guarded: Guarded, askVersion: AskVersion): Promise<vscode.Uri | undefined> {
  const uri = of ?? vscode.window.activeTextEditor?.document.uri;
  const document = vscode.workspace.textDocuments.find((one) => one.uri.toString() === uri?.toString());
  if (document === undefined || !isEstimate(document)) return undefined;
  const key = document.uri.toString();
  if (!(await desk.whole(key))) return undefined;
  const decision = desk.service.decision(key);
  const wanted = await pickWanted(decision, desk.service.weighing(key).problems);
  if (wanted === undefined) return undefined;
  const before = wanted.kind === 'supplement' ? await versionBefore(await askVersion(key)) : undefined;
  const defaultUri = proposed(document.uri, wanted.kind === 'supplement' ? `${wanted.name}-supplement` : wanted.name);
  const target = await vscode.window.showSaveDialog({ title: 'Write the quote', saveLabel: 'Write', ...(defaultUri === undefined ? {} : { defaultUri }), filters: { 'Page to print': ['html'] } });
  if (target === undefined) return undefined;
  // Made from the text as it is now: it may have changed while questions were open.
  const fresh = (await desk.whole(key)) ? desk.service.decision(key) : decision;
  const since = before === undefined ? undefined : { before, records: desk.service.weighing(key).resolved.records };
  const made = pageOf(wanted, fresh, await readPictures(fresh, guarded), since);
  if ('why' in made) {
    void vscode.window.showWarningMessage(asNotice(made.why));
    return undefined;
  }
  try {
    await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(made.page));
  } catch (error) {
    void vscode.window.showErrorMessage(asNotice(`The quote could not be written: ${wordsOf(error)}`));
    return undefined;
  }
  void offerToOpen(target, made.absent);
  sayRuledOut(wanted, fresh);
  return target;
}

const INCOMPLETE: Made = { why: 'No quote was written: a line that it rests on can’t be read or priced.' };

function pageOf({ kind, name }: Wanted, decision: Decision, pictures: PictureFiles, since: Since): Made {
  switch (kind) {
    case 'option': {
      const made = quoteOf(decision, name, pictures);
      return made.kind === 'quote' ? { page: quoteForm(made.quote, 'html'), absent: absentIn(made.quote.findings) } : INCOMPLETE;
    }
    case 'stage': {
      const made = stageQuoteOf(decision.comparison, name, pictures);
      return made.kind === 'quote' ? { page: sheetForm(stageSheetOf(made.quote), 'html'), absent: absentIn(made.quote.findings) } : INCOMPLETE;
    }
    case 'supplement': {
      const made = supplementOf(decision, name, since);
      return made.kind === 'supplement' ? { page: sheetForm(supplementSheetOf(made.supplement), 'html'), absent: [] } : INCOMPLETE;
    }
  }
}

/** Says what speaks against the option that was quoted. */
function sayRuledOut({ kind, name }: Wanted, { comparison: { options } }: Decision): void {
  const option = kind === 'option' ? options.find((one) => one.option.name === name)?.option : undefined;
  if (option === undefined || option.ruledOutBy.length === 0) return;
  void vscode.window.showWarningMessage(asNotice(`The option that was quoted is ruled out: ${spokenAgainst(option)}.`));
}

function absentIn(findings: Parameters<typeof quoteForm>[0]['findings']): string[] {
  return findings.flatMap(({ pictures }) => pictures.filter(({ kind }) => kind === 'absent').map((one) => one.name));
}

async function versionBefore(version: Version | undefined): Promise<VersionRead | undefined> {
  const side = await version?.read();
  if (side === undefined || 'why' in side) return undefined;
  const { resolved: { records }, comparison } = side.service.weighing(side.uri);
  return { records, comparison };
}

type Item = vscode.QuickPickItem & { readonly wanted?: Wanted };

/**
 * Options that are not whole are left out, and it says how many. Which costs least is said only where nothing may hide a
 * cheaper one; those that something found speaks against come last, and say so.
 */
async function pickWanted({ comparison }: Decision, problems: readonly Problem[]): Promise<Wanted | undefined> {
  const { options, ranking, stages, money } = comparison;
  const amount = (of: { readonly likely: Parameters<typeof moneyText>[0] }) => `${moneyText(of.likely, money)} ${money.currency.code}`.trimEnd();
  const chosen = chosenIn(comparison, problems);
  const whole = [...ranking, ...options.filter((one) => one.complete && !ranking.includes(one))];
  const ways: readonly Item[] = whole.map(({ option, totals, ready }) => ({
    label: option.title,
    description: amount(totals.total),
    detail: [...(chosen.kind === 'chosen' && chosen.option === option ? ['costs least in all'] : []), ...(option.ruledOutBy.length === 0 ? [] : [`${RULED_OUT}: ${option.ruledOutBy.map(({ title }) => `“${title}”`).join(', ')}`]), ...(ready.date === undefined || ready.bay.likely.isZero() ? [] : [`ready ${ready.date}`])].join(', '),
    wanted: { kind: 'option', name: option.name },
  }));
  const before: readonly Item[] = stages.filter(({ complete }) => complete).map(({ stage, totals }) => ({ label: stage.title, description: amount(totals.total), detail: 'by itself, before the decision', wanted: { kind: 'stage', name: stage.name } }));
  const agreed: readonly Item[] = authorisedIn(comparison).filter(({ of, complete }) => complete && options.some(({ option }) => option === of)).map((held) => ({
    label: `What is new since it was authorised: ${held.of.title}`,
    description: `${amount(held.amount)} authorised${held.authorised.on === undefined ? '' : ` on ${held.authorised.on}`}`,
    wanted: { kind: 'supplement', name: held.of.name },
  }));
  const items = [...ways, ...before, ...agreed];
  if (items.length === 0) {
    void vscode.window.showWarningMessage('There is no option to quote yet: none is whole.');
    return undefined;
  }
  const left = options.length - whole.length;
  const placeHolder = left === 0 ? 'What is quoted?' : `What is quoted? ${left} not shown: ${left === 1 ? 'a line it rests on' : 'lines they rest on'} can’t be read or priced.`;
  return (await vscode.window.showQuickPick(asItems(items), { placeHolder }))?.wanted;
}

function proposed(estimate: vscode.Uri, option: string): vscode.Uri | undefined {
  const { root, file } = rootOf(estimate);
  if (estimate.scheme === 'untitled' && vscode.workspace.workspaceFolders === undefined) return undefined;
  const folder = root.with({ path: file.slice(0, file.lastIndexOf('/')) || '/' });
  return vscode.Uri.joinPath(folder, `${nameOf(estimate.toString()).replace(/\.yard$/i, '')}-${option}.html`);
}

/** The pictures of the findings. One that can't be read is named on the quote like one that isn't there. */
async function readPictures({ comparison: { estimate } }: Decision, guarded: Guarded): Promise<PictureFiles> {
  return new Map(await Promise.all(picturesWanted(estimate.findings).map(async (key): Promise<[string, PictureFile]> => {
    const found = await guarded.bytes(vscode.Uri.parse(key, true), LARGEST_PICTURE);
    return [key, found.kind === 'unreadable' ? { kind: 'missing' } : found];
  })));
}

const OPEN = 'Open in the browser';

/** A browser can open what lies on this machine's disk; elsewhere the file is only named. */
async function offerToOpen(target: vscode.Uri, absent: readonly string[]): Promise<void> {
  const says = `Wrote ${nameOf(target.toString())}.${absent.length === 0 ? '' : ` Not in it, and said so in its place: ${absent.join(', ')}.`}`;
  const offers = target.scheme === 'file' && vscode.env.remoteName === undefined ? [OPEN] : [];
  if ((await vscode.window.showInformationMessage(asNotice(says), ...offers)) === OPEN) await vscode.env.openExternal(target);
}
