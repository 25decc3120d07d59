import * as vscode from 'vscode';
import type { Diagnostic } from '../../service/index.js';

type Wanted = Diagnostic['severity'] | 'off';

const known: ReadonlySet<unknown> = new Set<Wanted>(['error', 'warning', 'advice', 'off']);

/** What the settings make of problems, by code. Settings are written by hand: what is no severity is passed over. */
export function severitiesWanted(): Readonly<Record<string, Wanted>> {
  const written = vscode.workspace.getConfiguration('steelyard').get<unknown>('severities');
  if (typeof written !== 'object' || written === null) return {};
  return Object.fromEntries(Object.entries(written).filter((entry): entry is [string, Wanted] => known.has(entry[1])));
}
