import type { ExtensionContext } from 'vscode';
import { linksOnDiskLeadOut } from './links-on-disk.js';
import { start } from './web.js';

/** The extension on a desktop or a server: the bundle of the web, which is loaded beside this one, with the disk's own links. */
export function activate(context: ExtensionContext): void {
  start(context, linksOnDiskLeadOut);
}
