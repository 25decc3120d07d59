import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { createLanguageService, resolveWithin, type Diagnostic } from '../../src/service/index.js';
import type { Resolved } from '../../src/estimate/index.js';
import type { Comparison, Weighed } from '../../src/weigh/index.js';

/** An estimate as the service sees it, for tests: what it comes to, and what is wrong with it. */
export interface Read {
  readonly resolved: Resolved;
  readonly comparison: Comparison;
  readonly diagnostics: readonly Diagnostic[];
  readonly errors: readonly Diagnostic[];
  readonly option: (name: string) => Weighed;
}

function readBy(service: ReturnType<typeof createLanguageService>, uri: string): Read {
  const { resolved, comparison } = service.weighing(uri);
  const diagnostics = [...service.allDiagnostics(uri).values()].flat();
  return {
    resolved, comparison, diagnostics,
    errors: diagnostics.filter((one) => one.severity === 'error'),
    option: (name) => {
      const found = comparison.options.find((one) => one.option.name === name);
      if (found === undefined) throw new Error(`no option ${name}`);
      return found;
    },
  };
}

/** Weighs a text that uses no other file. */
export function read(text: string): Read {
  const uri = '/w/one.yard';
  return readBy(createLanguageService({ read: (file) => (file === uri ? { text } : 'missing'), resolvePath: (from, to) => resolveWithin('/w', from, to) }), uri);
}

/** Weighs a text that must be free of errors. */
export function readSound(text: string): Read {
  const found = read(text);
  if (found.errors.length > 0) throw new Error(`${found.errors.map((one) => one.text).join('\n')}\n${text}`);
  return found;
}

const samplesRoot = path.resolve(import.meta.dirname, '../../samples');

/** Samples that stand in samples/ and its folders, shared files too. */
export const sampleFiles: readonly string[] = readdirSync(samplesRoot, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.yard')).sort();

export function readSample(file: string): Read {
  const host = { read: (uri: string) => (existsSync(uri) ? { text: readFileSync(uri, 'utf8') } : ('missing' as const)), resolvePath: (from: string, to: string) => resolveWithin(samplesRoot, from, to) };
  return readBy(createLanguageService(host), path.join(samplesRoot, file));
}
