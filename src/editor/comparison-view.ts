import type { Span } from '../language/index.js';
import type { Place } from '../service/index.js';
import { wordsOf } from '../report/index.js';
import {
  closingTargets, comparisonPage, decisionPart, decisionStopped, decisionTargets, decisionView, derivationFields, derivationsOf, derivationTargets, keepLastGood, pageFromBefore, pageOfNothing, targetsOf, writtenFigure,
  type Column, type Derivations, type FlipRow, type LineOf, type PageView, type PictureSource, type Targets, type TrialField, type Tried, type Trying,
} from '../report/page/index.js';
import type { Kept } from '../page/messages.js';
import { decide, type Comparison } from '../weigh/index.js';
import { rowsAt } from './here.js';
import { homeOf, restored, saved, stillTried, trialOf, withoutTrial, withTrial, type KeptTrial } from './trials.js';
import type { Desk } from './desk.js';
import { nameOf, type Key } from './places.js';

/** Rows unfolded at once; each is made anew after every keystroke. */
const MOST_UNFOLDED = 50;

/** What the panel shows of one estimate: made again after each change, with the last good figures carried along. */
export class ComparisonView {
  private columns: readonly Column[] = [];
  private comparison: Comparison | undefined;
  /** The page as it last came out whole. */
  private good: PageView | undefined;
  private targets: Targets = new Map();
  /** The later part of the page stays until it is made again, and leads where it did. */
  private laterTargets: Targets = new Map();

  private trials: readonly KeptTrial[] = [];
  private dropped: readonly string[] = [];
  private rows: readonly FlipRow[] = [];
  private readonly unfolded = new Set<string>();
  private derivations: Derivations = new Map();

  constructor(private readonly desk: Desk, readonly estimate: Key, private readonly pictureOf: (uri: string) => PictureSource) {}

  /** The inside of the page as the text stands now. Where that can't be worked out, it stays as it was, and says so. */
  markup(): string {
    try {
      const view = this.viewNow();
      const page = comparisonPage(view);
      this.good = view;
      return page;
    } catch (error) {
      return this.markupWithout(error);
    }
  }

  private viewNow(): PageView {
    const { comparison, problems } = this.desk.service.weighing(this.estimate);
    const { trials, dropped } = stillTried(this.trials, this.desk.service);
    if (dropped.length > 0) this.dropped = dropped.map(({ names }) => names);
    this.trials = trials;
    const shown = trials.length === 0 ? comparison : this.desk.service.trying(this.estimate, trials);
    this.columns = keepLastGood(this.columns, { comparison: shown, problems });
    this.comparison = shown;
    this.derivations = derivationsOf(this.columns, this.unfolded, this.tried());
    this.targets = new Map([...targetsOf(this.columns, shown.estimate), ...closingTargets(shown), ...derivationTargets(this.derivations)]);
    return { comparison: shown, columns: this.columns, lineOf: this.lineOf, trying: this.trying(), derivations: this.derivations, pictureOf: this.pictureOf };
  }

  /** The page where working it out threw: as it last was. What is tried now may be the cause, and can be taken back. */
  private markupWithout(error: unknown): string {
    console.error(error);
    const { good } = this;
    this.comparison = good?.comparison;
    if (good === undefined) return pageOfNothing(nameOf(this.estimate), wordsOf(error));
    this.columns = good.columns;
    this.derivations = good.derivations ?? new Map();
    this.targets = new Map([...targetsOf(this.columns, good.comparison.estimate), ...closingTargets(good.comparison), ...derivationTargets(this.derivations)]);
    return pageFromBefore({ ...good, trying: this.trying() }, wordsOf(error));
  }

  /** The later part of the page: what helps to decide, about the comparison that is shown. Some ten times as dear. */
  laterMarkup(): string | undefined {
    const { comparison } = this;
    if (comparison === undefined) return undefined;
    try {
      return this.laterOf(comparison);
    } catch (error) {
      console.error(error);
      this.rows = [];
      this.laterTargets = new Map();
      return decisionStopped(comparison, wordsOf(error));
    }
  }

  private laterOf(comparison: Comparison): string {
    const tried = this.tried();
    const file = tried === undefined ? undefined : { decision: this.desk.service.decision(this.estimate), ...tried };
    const view = decisionView(decide(comparison), this.columns, file);
    const part = decisionPart(view);
    this.rows = view.flips;
    this.laterTargets = decisionTargets(view);
    return part;
  }

  /** Tries another value for a figure of the page; the one that stands in the file ends the trial. False where it can't be tried. */
  tryValue(id: string, value: string): boolean {
    const found = this.fieldOf(id);
    const trial = found === undefined ? undefined : trialOf(id, found.field.names, found.at, value, this.desk.service);
    if (found === undefined || trial === undefined) return false;
    this.dropped = [];
    this.trials = value === found.field.today ? withoutTrial(this.trials, trial.at) : withTrial(this.trials, trial);
    return true;
  }

  /** Unfolds a row into how its figures were made, or folds it. */
  unfold(row: string, open: boolean): void {
    if (!open) this.unfolded.delete(row);
    else if (this.unfolded.size < MOST_UNFOLDED) this.unfolded.add(row);
  }

  /** Ends all trials; answers with them and with the edits that write them. */
  endTrials(): { readonly trials: readonly KeptTrial[]; readonly edits: readonly { readonly place: Place; readonly text: string }[] } {
    const { trials } = this;
    const edits = trials.flatMap((trial) => {
      const made = this.desk.service.trialEdit(trial);
      return made === undefined ? [] : [{ place: { uri: made.uri, range: made.edit.range }, text: made.edit.text }];
    });
    this.trials = [];
    this.dropped = [];
    return { trials, edits };
  }

  /** Takes trials up again that could not be written. */
  takeUp(trials: readonly KeptTrial[]): void {
    this.trials = trials;
  }

  /** What a page is asked to keep, so that it comes back as it was. */
  saved(): Kept {
    return { unfolded: [...this.unfolded], tried: this.trials.map(saved) };
  }

  /** As it was before the window was closed: only what still is in the files of this estimate. */
  restore({ unfolded, tried }: Kept): void {
    const { service } = this.desk;
    const files = new Set([this.estimate, ...service.uses(this.estimate)]);
    unfolded.forEach((row) => this.unfold(row, true));
    for (const one of tried) {
      const trial = files.has(one.uri) ? restored(one, service) : undefined;
      if (trial !== undefined) this.trials = withTrial(this.trials, trial);
    }
  }

  /** The rows of the page that come from the line at an offset of a file. */
  rowsAt(uri: Key, offset: number): readonly string[] {
    return rowsAt([this.targets, this.laterTargets], uri, offset, homeOf(this.trials), this.desk.service);
  }

  private fieldOf(id: string): { readonly field: TrialField; readonly at: Span } | undefined {
    const row = this.rows.find(({ field }) => field?.id === id);
    return row?.field === undefined ? derivationFields(this.derivations).get(id) : { field: row.field, at: row.at };
  }

  private tried(): Tried | undefined {
    const { trials } = this;
    return trials.length === 0 ? undefined : { home: homeOf(trials), valueOf: (at) => trials.find((one) => one.at.block === at.block && one.at.start === at.start)?.value };
  }

  private trying(): Trying {
    return {
      trials: this.trials.map(({ id, names, value, at }) => {
        const { value: today = '', unit = '' } = writtenFigure(at) ?? {};
        const words = (one: string) => (unit === '' ? one : `${one} ${unit}`);
        return { id, names, value: words(value), instead: words(today) };
      }),
      dropped: this.dropped,
    };
  }

  /** Where a figure of the page leads in the text as it stands now. */
  placeOf(figure: string): Place | undefined {
    const home = homeOf(this.trials);
    for (const span of this.targets.get(figure) ?? this.laterTargets.get(figure) ?? []) {
      const place = this.desk.service.place(home(span));
      if (place !== undefined) return place;
    }
    return undefined;
  }

  private readonly lineOf: LineOf = (span: Span) => {
    const place = this.desk.service.place(span);
    const range = place === undefined ? undefined : this.desk.positions.range(place);
    if (place === undefined || range === undefined) return undefined;
    return { line: range.start.line + 1, file: place.uri === this.estimate ? undefined : nameOf(place.uri) };
  };
}
