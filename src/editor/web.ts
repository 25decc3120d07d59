import type { ExtensionContext } from 'vscode';
import { linksLeadOut } from './links.js';
import { start } from './start.js';

export { start };

/** The extension in a browser; on a desktop or a server the same code is started by `extension.ts`. */
export function activate(context: ExtensionContext): void {
  start(context, linksLeadOut);
}
