import * as vscode from 'vscode';
import type { Desk } from './desk.js';
import { isEstimate } from './places.js';

/** Shows what a line comes to, option by option, and what its words mean. Text from a file is never read as markup. */
export class Hovers implements vscode.HoverProvider {
  constructor(private readonly desk: Desk) {}

  async provideHover(document: vscode.TextDocument, position: vscode.Position): Promise<vscode.Hover | undefined> {
    if (!isEstimate(document)) return undefined;
    const key = document.uri.toString();
    await this.desk.whole(key);
    const hover = this.desk.service.hover(key, document.offsetAt(position));
    if (hover === undefined) return undefined;
    return new vscode.Hover(hover.paragraphs.map(asText), this.desk.positions.range({ uri: key, range: hover.range }));
  }
}

/** Text appended whole has no place where a line may break; so each word is appended by itself. */
function asText(paragraph: string): vscode.MarkdownString {
  const text = new vscode.MarkdownString();
  paragraph.split(' ').forEach((word, i) => (i === 0 ? text : text.appendMarkdown(' ')).appendText(word));
  return text;
}
