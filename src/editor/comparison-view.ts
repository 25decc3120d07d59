import type { Span } from '../language/index.js';
import type { Place } from '../service/index.js';
import { comparisonPage, decisionPart, decisionTargets, decisionView, keepLastGood, targetsOf, writtenFigure, type Column, type FlipRow, type LineOf, type Targets, type Trying } from '../report/page/index.js';
import { decide, type Comparison } from '../weigh/index.js';
import { homeOf, stillTried, trialOf, withTrial, type KeptTrial } from './trials.js';
import type { Desk } from './desk.js';
import { nameOf, type Key } from './places.js';

/** What the panel shows of one estimate: made again after each change, with the last good figures carried along. */
export class ComparisonView {
  private columns: readonly Column[] = [];
  private comparison: Comparison | undefined;
  private targets: Targets = new Map();
  /** The later part of the page stays until it is made again, and leads where it did. */
  private laterTargets: Targets = new Map();

  private trials: readonly KeptTrial[] = [];
  private dropped: readonly string[] = [];
  private rows: readonly FlipRow[] = [];

  constructor(private readonly desk: Desk, readonly estimate: Key) {}

  /** The inside of the page as the text stands now. */
  markup(): string {
    const { comparison, problems } = this.desk.service.weighing(this.estimate);
    const { trials, dropped } = stillTried(this.trials, this.desk.service);
    if (dropped.length > 0) this.dropped = dropped.map(({ names }) => names);
    this.trials = trials;
    this.comparison = trials.length === 0 ? comparison : this.desk.service.trying(this.estimate, trials);
    this.columns = keepLastGood(this.columns, { comparison: this.comparison, problems });
    this.targets = targetsOf(this.columns);
    return comparisonPage({ comparison: this.comparison, columns: this.columns, lineOf: this.lineOf, trying: this.trying() });
  }

  /** The later part of the page: what helps to decide, about the comparison that is shown. Some ten times as dear. */
  laterMarkup(): string | undefined {
    if (this.comparison === undefined) return undefined;
    const valueOf = (at: Span) => this.trials.find((one) => one.at.block === at.block && one.at.start === at.start)?.value;
    const file = this.trials.length === 0 ? undefined : { decision: this.desk.service.decision(this.estimate), home: homeOf(this.trials), valueOf };
    const view = decisionView(decide(this.comparison), this.columns, file);
    this.rows = view.flips;
    this.laterTargets = decisionTargets(view);
    return decisionPart(view);
  }

  /** Tries another value for a figure of the page; the one that stands in the file ends the trial. False where it can't be tried. */
  tryValue(figure: string, value: string): boolean {
    const row = this.rows.find(({ field }) => field?.id === figure);
    if (row?.field === undefined) return false;
    const trial = trialOf(figure, row.field.names, row.at, value, this.desk.service);
    if (trial === undefined) return false;
    this.dropped = [];
    this.trials = value === row.field.today ? this.trials.filter(({ id }) => id !== figure) : withTrial(this.trials, trial);
    return true;
  }

  /** Ends all trials; answers with the edits that write them. */
  endTrials(): readonly { readonly place: Place; readonly text: string }[] {
    const edits = this.trials.flatMap((trial) => {
      const made = this.desk.service.trialEdit(trial);
      return made === undefined ? [] : [{ place: { uri: made.uri, range: made.edit.range }, text: made.edit.text }];
    });
    this.trials = [];
    this.dropped = [];
    return edits;
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
