import type { ExtensionContext } from 'vscode';
import { linksOnDiskLeadOut } from './links-on-disk.js';
import { start } from './start.js';

/** The extension on a desktop or a server. */
export function activate(context: ExtensionContext): void {
  start(context, linksOnDiskLeadOut);
}
