import type { QuickPickItem } from 'vscode';
import { plain } from '../report/index.js';

/**
 * Words that may be a file's, for a notification. The editor makes a link of `[words](address)` there, and a link may
 * run a command; so the two are kept apart.
 */
export function asNotice(text: string): string {
  return plain(text).replace(/\](?=\()/g, '] ');
}

/** Words for a lens or an item to pick. The editor makes an icon of `$(name)` there; behind a backslash it is text. */
export function asLabel(text: string): string {
  return plain(text).replace(/\$\((?=[\w~-]+\))/g, '\\$(');
}

/** Words for the status beside the language's name, where links and icons are made alike. */
export function asStatus(text: string): string {
  return asLabel(asNotice(text));
}

/** Items to pick from, their words as text. An icon of ours is an item's `iconPath`. */
export function asItems<T extends QuickPickItem>(items: readonly T[]): T[] {
  return items.map((item) => ({
    ...item,
    label: asLabel(item.label),
    ...(item.description === undefined ? {} : { description: asLabel(item.description) }),
    ...(item.detail === undefined ? {} : { detail: asLabel(item.detail) }),
  }));
}
