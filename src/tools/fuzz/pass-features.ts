import { applyEdits } from '../../service/format/format.js';
import type { FileEdits, LanguageService, TextEdit } from '../../service/index.js';
import { clean, holds, same } from './claim.js';
import type { Dice } from './dice.js';
import type { Input } from './input.js';
import { deskOver, uriOf, type Desk } from './over.js';

/** A text shorter than this is asked about at every offset, once in so many inputs. */
const SHORT = 400;
const PLACES = 3;

/** Every language feature, at some offsets or at all; what they offer to write is written, and looked at again. */
export function passFeatures(input: Input, { service }: Desk, dice: Dice): void {
  const uri = uriOf(input.name);
  const text = input.files.get(input.name) as string;
  const all = text.length < SHORT && dice.chance(5);
  const offsets = all ? Array.from({ length: text.length + 1 }, (_, i) => i) : Array.from({ length: PLACES }, () => dice.placeIn(text));
  ofTheFile(service, uri, text);
  for (const offset of offsets) atOffset(service, uri, text, offset);
  written(input, service, offsets.slice(0, PLACES), dice);
  same('asking changes no text', service.tree(uri)?.text ?? '', text);
}

function within(claim: string, { start, end }: TextEdit['range'], length: number): void {
  holds(`${claim} lies within its file`, start >= 0 && start <= end && end <= length, () => `${start}–${end} of ${length}`);
}

function ofTheFile(service: LanguageService, uri: string, text: string): void {
  const visit = (symbols: ReturnType<LanguageService['symbols']>): void => {
    for (const one of symbols) {
      within('a line of the outline', one.range, text.length);
      holds('a name in the outline lies within its lines', one.range.start <= one.nameRange.start && one.nameRange.end <= one.range.end && one.name !== '', () => one.name);
      visit(one.children);
    }
  };
  visit(service.symbols(uri));
  const lines = text.split('\n').length;
  for (const { startLine, endLine } of service.folding(uri)) holds('folded lines are lines', startLine >= 0 && startLine < endLine && endLine < lines, () => `${startLine}–${endLine} of ${lines}`);
  let last = 0;
  for (const { range } of service.semanticTokens(uri)) {
    within('a coloured word', range, text.length);
    holds('coloured words come in order and don’t overlap', range.start >= last, () => `${range.start} before ${last}`);
    last = range.end;
  }
  for (const { range, label } of service.lenses(uri)) {
    within('a line above a line', range, text.length);
    clean('a line above a line is words', label, text);
  }
  for (const { offset, label, says } of service.inlayHints(uri, { start: 0, end: text.length })) {
    within('a figure behind a line', { start: offset, end: offset }, text.length);
    clean('a figure behind a line is words', `${label} ${says}`, text);
  }
  for (const { range } of service.links(uri)) within('a link', range, text.length);
  const status = service.status(uri);
  if (status !== undefined) clean('the state of a file is words', `${status.short} ${status.full}`, text);
  service.workspaceSymbols('a', [uri]);
  service.starter(uri, '2026-11-24');
}

function atOffset(service: LanguageService, uri: string, text: string, offset: number): void {
  const hover = service.hover(uri, offset);
  if (hover !== undefined) {
    within('what a hover is about', hover.range, text.length);
    clean('a hover is words', hover.paragraphs.join('\n'), everyText(service, uri));
  }
  for (const { edit, label, detail = '', says = '' } of service.completions(uri, offset)) {
    within('what a completion replaces', edit.range, text.length);
    holds('a completion replaces what is around the cursor', edit.range.start <= offset && offset <= edit.range.end, () => `${label}: ${edit.range.start}–${edit.range.end} at ${offset}`);
    clean('a completion is words', `${label} ${detail} ${says} ${edit.text}`, everyText(service, uri));
  }
  const places = [...service.definition(uri, offset), ...service.references(uri, offset, [])];
  for (const { uri: file, range } of places) within('where a name leads', range, service.tree(file)?.text.length ?? -1);
  for (const { range } of service.highlights(uri, offset)) within('a marked name', range, text.length);
  let inner = { start: offset, end: offset };
  for (const range of service.selectionRanges(uri, offset)) {
    within('a selection', range, text.length);
    holds('selections grow', range.start <= inner.start && inner.end <= range.end, () => `${range.start}–${range.end} around ${inner.start}–${inner.end}`);
    inner = range;
  }
  for (const { title, amount } of service.totalsUsing(uri, offset)) clean('totals that use a line are words', `${title} ${amount}`, everyText(service, uri));
  service.formatOnType(uri, offset);
  service.pastedRows(uri, offset, 'Pump\t2\t64.30\nSeal\t1\t5');
}

function everyText(service: LanguageService, uri: string): string {
  return [uri, ...service.uses(uri)].map((file) => service.tree(file)?.text ?? '').join('\n');
}

/** What is offered to be written, written into copies of the files: the service goes on from there. */
function written({ files, name }: Input, service: LanguageService, offsets: readonly number[], dice: Dice): void {
  const uri = uriOf(name);
  const text = files.get(name) as string;
  const edits: FileEdits[] = [];
  for (const offset of offsets) {
    const renamed = service.prepareRename(uri, offset) === undefined ? undefined : service.rename(uri, offset, 'brand-new', []);
    if (renamed !== undefined && !('refused' in renamed)) edits.push(renamed);
    const actions = service.actions(uri, { start: offset, end: Math.min(text.length, offset + dice.upTo(60)) });
    for (const { title, edits: own } of actions) {
      clean('what is offered is words', title, everyText(service, uri));
      edits.push(own);
    }
    const completions = service.completions(uri, offset).filter(({ snippet }) => !snippet);
    if (completions.length > 0) edits.push(new Map([[uri, [dice.pick(completions).edit]]]));
  }
  const problems = service.diagnostics(uri).filter(({ fix }) => fix !== undefined);
  const fix = problems.length === 0 ? undefined : dice.pick(problems).fix;
  if (fix !== undefined) edits.push(new Map([[fix.place.uri, [{ range: fix.place.range, text: fix.text }]]]));
  if (edits.length === 0) return;
  for (const one of [dice.pick(edits)]) {
    const made = new Map(files);
    for (const [file, list] of one) {
      const before = files.get(file.slice(uriOf('').length)) ?? '';
      holds('edits of a file don’t overlap', sorted(list).every((edit, i, all) => i === 0 || (all[i - 1] as TextEdit).range.end <= edit.range.start), () => JSON.stringify(list));
      for (const edit of list) within('an edit', edit.range, before.length);
      made.set(file.slice(uriOf('').length), applyEdits(before, sorted(list)));
    }
    deskOver(made).service.allDiagnostics(uri);
  }
}

function sorted(list: readonly TextEdit[]): readonly TextEdit[] {
  return [...list].sort((a, b) => a.range.start - b.range.start || a.range.end - b.range.end);
}
