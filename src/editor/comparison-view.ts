import type { Span } from '../language/index.js';
import type { Place } from '../service/index.js';
import { comparisonPage, decisionPart, decisionTargets, decisionView, keepLastGood, targetsOf, type Column, type LineOf, type Targets } from '../report/page/index.js';
import { decide, type Comparison } from '../weigh/index.js';
import type { Desk } from './desk.js';
import { nameOf, type Key } from './places.js';

/** What the panel shows of one estimate: made again after each change, with the last good figures carried along. */
export class ComparisonView {
  private columns: readonly Column[] = [];
  private comparison: Comparison | undefined;
  private targets: Targets = new Map();
  /** The later part of the page stays until it is made again, and leads where it did. */
  private laterTargets: Targets = new Map();

  constructor(private readonly desk: Desk, readonly estimate: Key) {}

  /** The inside of the page as the text stands now. */
  markup(): string {
    const { comparison, problems } = this.desk.service.weighing(this.estimate);
    this.comparison = comparison;
    this.columns = keepLastGood(this.columns, { comparison, problems });
    this.targets = targetsOf(this.columns);
    return comparisonPage({ comparison, columns: this.columns, lineOf: this.lineOf });
  }

  /** The later part of the page: what helps to decide, about the comparison that is shown. Some ten times as dear. */
  laterMarkup(): string | undefined {
    if (this.comparison === undefined) return undefined;
    const view = decisionView(decide(this.comparison), this.columns);
    this.laterTargets = decisionTargets(view);
    return decisionPart(view);
  }

  /** Where a figure of the page leads in the text as it stands now. */
  placeOf(figure: string): Place | undefined {
    for (const span of this.targets.get(figure) ?? this.laterTargets.get(figure) ?? []) {
      const place = this.desk.service.place(span);
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
