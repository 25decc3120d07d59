import type { Span } from '../language/index.js';
import type { Place } from '../service/index.js';
import { comparisonPage, keepLastGood, targetsOf, type Column, type LineOf, type Targets } from '../report/page/index.js';
import type { Desk } from './desk.js';
import { nameOf, type Key } from './places.js';

/** What the panel shows of one estimate: made again after each change, with the last good figures carried along. */
export class ComparisonView {
  private columns: readonly Column[] = [];
  private targets: Targets = new Map();

  constructor(private readonly desk: Desk, readonly estimate: Key) {}

  /** The inside of the page as the text stands now. */
  markup(): string {
    const { comparison, problems } = this.desk.service.weighing(this.estimate);
    this.columns = keepLastGood(this.columns, { comparison, problems });
    this.targets = targetsOf(this.columns);
    return comparisonPage({ comparison, columns: this.columns, lineOf: this.lineOf });
  }

  /** Where a figure of the page leads in the text as it stands now. */
  placeOf(figure: string): Place | undefined {
    for (const span of this.targets.get(figure) ?? []) {
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
