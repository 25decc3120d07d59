import path from 'node:path';
import { parse, type Tree } from '../language/index.js';
import { historyJson, historyText, jsonText, wordsOf, type LeftOut, type PlacedCase } from '../report/index.js';
import { historyOf, mayBeClosed, readClosed, type Job } from '../weigh/index.js';
import type { ManyFiles } from './files.js';
import { matchingFiles } from './matching-files.js';
import { emphasisOf, type Terminal } from './terminal.js';

/** `steelyard history`: what jobs really took, over all closed estimates. True where every closed file could be read. */
export function history(words: readonly string[], json: boolean, files: ManyFiles, terminal: Terminal): boolean {
  const reading = new Reading(files);
  const progress = progressOn(terminal);
  const seen = new Set<string>();
  for (const word of words.length === 0 ? ['.'] : words) {
    for (const uri of matchingFiles(word, terminal.cwd, (folder, why) => reading.leaveOut(folder, `${files.nameOf(folder)} ${why}`))) {
      if (seen.has(uri)) continue;
      seen.add(uri);
      reading.add(uri);
      progress.show(seen.size);
    }
  }
  progress.end();
  const { cases, closed, leftOut } = reading;
  const made = { jobs: historyOf(cases), files: seen.size, closed, leftOut };
  terminal.out(json ? jsonText(historyJson(made)) : historyText(made, emphasisOf(terminal)));
  return leftOut.length === 0;
}

/** Takes from one file after the other what it adds, and lets go of it. Files that several use are read once. */
class Reading {
  readonly cases: PlacedCase[] = [];
  readonly leftOut: LeftOut[] = [];
  closed = 0;
  private readonly shared = new Map<string, Tree | 'missing' | 'unknown'>();
  private readonly paths = new Map<string, string | undefined>();
  private readonly jobs = new Map<string, Job>();

  constructor(private readonly files: ManyFiles) {}

  add(uri: string): void {
    try {
      const read = this.files.host.read(uri);
      // It was there a moment ago.
      if (typeof read === 'string') this.leaveOut(uri, 'The file is not there any more.');
      else if (mayBeClosed(read.text)) this.take(uri, read.text);
    } catch (error) {
      // Whatever one file is, the others are read.
      this.leaveOut(uri, wordsOf(error));
    }
    this.files.forget(uri);
  }

  leaveOut(uri: string, why: string): void {
    this.leftOut.push({ file: this.files.nameOf(uri), line: undefined, why });
  }

  private take(uri: string, text: string): void {
    const { cases, wrong } = readClosed(uri, text, { treeOf: (other) => this.sharedTree(other), resolvePath: (from, written) => this.resolved(from, written) });
    const file = this.files.nameOf(uri);
    this.closed++;
    if (wrong !== undefined) this.leftOut.push({ file, ...wrong });
    for (const one of cases) this.cases.push({ ...one, job: this.known(one.job), file });
  }

  /** Where a path leads is the same from all files of a folder, and asked of the disk once. */
  private resolved(from: string, written: string): string | undefined {
    const key = `${path.dirname(from)}\u0000${written}`;
    if (!this.paths.has(key)) this.paths.set(key, this.files.host.resolvePath(from, written));
    return this.paths.get(key);
  }

  /** One object for a job however many files have it: words of a text keep hold of all of it. */
  private known(job: Job): Job {
    const key = `${job.key}\u0000${job.title}`;
    const before = this.jobs.get(key);
    if (before === undefined) this.jobs.set(key, job);
    return before ?? job;
  }

  private sharedTree(uri: string): Tree | 'missing' | 'unknown' {
    let tree = this.shared.get(uri);
    if (tree === undefined) {
      const read = this.files.host.read(uri);
      tree = typeof read === 'string' ? read : parse(uri, read.text);
      this.shared.set(uri, tree);
    }
    return tree;
  }
}

/** A run shorter than this says nothing of how far it is. */
const QUIET = 1000;
/** So many milliseconds between one word and the next. */
const EVERY = 200;

function progressOn({ progress = () => undefined }: Terminal): { readonly show: (count: number) => void; readonly end: () => void } {
  const started = performance.now();
  let last = started + QUIET - EVERY;
  let shown = false;
  return {
    show: (count) => {
      const now = performance.now();
      if (now - last < EVERY) return;
      last = now;
      shown = true;
      progress(`${count.toLocaleString('en')} files read`);
    },
    end: () => {
      if (shown) progress('');
    },
  };
}
