import { realpath } from 'node:fs/promises';
import path from 'node:path';
import { linksLeadOut, type LeadsOut } from './links.js';

/** On a disk a link says where it leads: inside the folder it may be followed. Not part of the web build. */
export const linksOnDiskLeadOut: LeadsOut = async (root, file) => {
  if (file.scheme !== 'file') return await linksLeadOut(root, file);
  const [realRoot, realFile] = await Promise.all([realpath(root.fsPath), realpath(file.fsPath)]);
  const way = path.relative(realRoot, realFile);
  return way === '..' || way.startsWith(`..${path.sep}`) || path.isAbsolute(way);
};
