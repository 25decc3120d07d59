import * as vscode from 'vscode';
import type { Range } from '../language/index.js';
import type { LanguageService, Place } from '../service/index.js';

/** Turns offsets into lines and columns, for files that are open and for those that are not. */
export class Positions {
  private readonly starts = new WeakMap<object, readonly number[]>();

  constructor(private readonly service: LanguageService) {}

  range(place: Place): vscode.Range | undefined {
    const starts = this.lineStarts(place.uri);
    return starts === undefined ? undefined : rangeOf(starts, place.range);
  }

  location(place: Place): vscode.Location | undefined {
    const range = this.range(place);
    return range === undefined ? undefined : new vscode.Location(vscode.Uri.parse(place.uri, true), range);
  }

  /** Where each line of a file starts. Worked out once for each of its texts. */
  private lineStarts(key: string): readonly number[] | undefined {
    const tree = this.service.tree(key);
    if (tree === undefined) return undefined;
    let starts = this.starts.get(tree);
    if (starts === undefined) {
      starts = [0, ...[...tree.text.matchAll(/\r\n|\r|\n/g)].map((end) => end.index + end[0].length)];
      this.starts.set(tree, starts);
    }
    return starts;
  }
}

function rangeOf(starts: readonly number[], { start, end }: Range): vscode.Range {
  const from = positionOf(starts, start);
  return new vscode.Range(from, end === start ? from : positionOf(starts, end));
}

function positionOf(starts: readonly number[], offset: number): vscode.Position {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] as number) <= offset) low = middle;
    else high = middle - 1;
  }
  return new vscode.Position(low, offset - (starts[low] as number));
}
