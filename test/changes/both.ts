import { changesBetween, type Side } from '../../src/service/changes.js';
import type { Changes } from '../../src/weigh/changes/index.js';
import { serviceOver, uriOf } from '../support/fixture.js';

/** One version: a text, or files by name of which the first is the estimate. */
export function sideOf(text: string | Readonly<Record<string, string>>, name: string): Side {
  const files = typeof text === 'string' ? { 'job.yard': text } : text;
  return { service: serviceOver(files).service, uri: uriOf(Object.keys(files)[0] as string), name };
}

export function changed(before: string | Readonly<Record<string, string>>, after: string | Readonly<Record<string, string>>): Changes {
  return changesBetween(sideOf(before, 'before'), sideOf(after, 'after'));
}
