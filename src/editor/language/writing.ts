import * as vscode from 'vscode';
import type { Desk } from '../desk.js';
import { isEstimate } from '../places.js';
import { toTextEdits } from './edits.js';

/** Puts lines into columns: the whole file, a selection, or the line just left. Never by itself on opening or saving. */
export class Formatting implements vscode.DocumentFormattingEditProvider, vscode.DocumentRangeFormattingEditProvider, vscode.OnTypeFormattingEditProvider {
  constructor(private readonly desk: Desk) {}

  provideDocumentFormattingEdits(document: vscode.TextDocument): vscode.TextEdit[] {
    const key = document.uri.toString();
    return toTextEdits(key, this.desk.service.format(key), this.desk.positions);
  }

  provideDocumentRangeFormattingEdits(document: vscode.TextDocument, range: vscode.Range): vscode.TextEdit[] {
    const key = document.uri.toString();
    const edits = this.desk.service.format(key, { start: document.offsetAt(range.start), end: document.offsetAt(range.end) });
    return toTextEdits(key, edits, this.desk.positions);
  }

  provideOnTypeFormattingEdits(document: vscode.TextDocument, position: vscode.Position): vscode.TextEdit[] {
    const key = document.uri.toString();
    return toTextEdits(key, this.desk.service.formatOnType(key, document.offsetAt(position)), this.desk.positions);
  }
}

const ROWS = vscode.DocumentDropOrPasteEditKind.Text.append('steelyard', 'part-lines');

/** Offers rows copied from a spreadsheet or a supplier's list as part lines, beside pasting them as they are. */
export class PastedRows implements vscode.DocumentPasteEditProvider {
  static readonly metadata: vscode.DocumentPasteProviderMetadata = { providedPasteEditKinds: [ROWS], pasteMimeTypes: ['text/plain'] };

  constructor(private readonly desk: Desk) {}

  async provideDocumentPasteEdits(document: vscode.TextDocument, ranges: readonly vscode.Range[], data: vscode.DataTransfer): Promise<vscode.DocumentPasteEdit[]> {
    const [range] = ranges;
    const pasted = await data.get('text/plain')?.asString();
    if (!isEstimate(document) || range === undefined || pasted === undefined) return [];
    const rows = this.desk.service.pastedRows(document.uri.toString(), document.offsetAt(range.start), pasted);
    if (rows === undefined) return [];
    const edit = new vscode.DocumentPasteEdit(rows.text, `Paste as ${rows.count} part ${rows.count === 1 ? 'line' : 'lines'}`, ROWS);
    // Offered, never forced: pasting stays what it was unless the writer picks this.
    edit.yieldTo = [vscode.DocumentDropOrPasteEditKind.Text];
    return [edit];
  }
}
