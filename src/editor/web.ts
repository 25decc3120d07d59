import type { ExtensionContext } from 'vscode';
import { linksLeadOut } from './links.js';
import { start } from './start.js';

/** The extension in a browser. */
export function activate(context: ExtensionContext): void {
  start(context, linksLeadOut);
}
