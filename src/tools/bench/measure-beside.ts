import { readFileSync } from 'node:fs';
import { parse } from '../../language/index.js';
import { readBlock, recordJson, type Record } from '../../vocabulary/index.js';
import { Editing } from './editing.js';
import { heap } from './heap.js';
import { manyFiles } from './many-files.js';
import { at, inMs, measure, row } from './measure.js';
import { jsonService, yamlService, type Peer } from './peers.js';
import { struckTexts } from './struck.js';

const FILES = 1_000;

/** What is asked of every service of the table, each round with a text that it has not seen. */
interface Asked {
  readonly label: string;
  readonly lines: number;
  readonly rounds: number;
  /** How many keys are struck: as many as take some seconds. A quarter of them warms up. */
  readonly keys: number;
  readonly whole: (round: number) => unknown;
  readonly keystroke: (round: number) => unknown;
  readonly completion: (round: number) => unknown;
  /** Reads many files for the first time; what is kept of them is returned. */
  readonly files: () => Promise<unknown>;
}

/** This product beside general-purpose language services on the same records, in one run: a table. */
export async function measureBeside(lines: number): Promise<string[]> {
  const editing = new Editing(lines);
  const schema = JSON.parse(readFileSync('schemas/estimate.schema.json', 'utf8')) as object;
  const all = [steelyard(editing), beside(jsonService(schema), editing, { rounds: 12, keys: 48 }), beside(yamlService(), editing, { rounds: 6, keys: 24 })];
  const cells = new Map<string, string[]>();
  const add = (label: string, cell: string) => cells.set(label, [...(cells.get(label) ?? []), cell]);
  for (const one of all) {
    add('lines of the same records', one.lines.toLocaleString('en'));
    for (const [label, work, rounds] of [['whole file', one.whole, one.rounds], ['one keystroke in a figure', one.keystroke, one.keys], ['completion behind a keystroke', one.completion, one.rounds]] as const) {
      const { ms } = await measure(label, rounds, work);
      add(`${label}, fastest`, inMs(at(0, ms)));
      add(`${label}, median`, inMs(at(0.5, ms)));
      add(`${label}, 95 of 100`, inMs(at(0.95, ms)));
    }
    const { ms, megabytes } = await filesOf(one);
    add(`${FILES.toLocaleString('en')} files, once`, inMs(ms));
    add('  heap with all of them known', `${megabytes.toFixed(0)} MB`);
  }
  const heads = row('', ...all.map(({ label }) => ` ${label}`));
  return [heads, ...[...cells].map(([label, values]) => row(label, ...values)), 'The others check shape or syntax alone, in a single text; they have no totals to keep. YAML is checked and completed without a schema.'];
}

/** In a function of its own: what one service keeps must be let go of before the next one is measured. */
async function filesOf({ files }: Asked): Promise<{ readonly ms: number; readonly megabytes: number }> {
  const before = heap();
  const started = performance.now();
  const kept = [await files()];
  const ms = performance.now() - started;
  const megabytes = heap() - before;
  kept.length = 0;
  return { ms, megabytes };
}

function steelyard(editing: Editing): Asked {
  return {
    label: 'Steelyard',
    lines: editing.text.split('\n').length,
    rounds: 40,
    keys: 600,
    whole: (round) => editing.whole(round),
    keystroke: (round) => editing.keystroke(round),
    completion: (round) => editing.completion(round),
    files: () => {
      const { service, estimates } = manyFiles(FILES).opened();
      for (const { uri } of estimates) service.allDiagnostics(uri);
      return Promise.resolve(service);
    },
  };
}

function beside(peer: Peer, editing: Editing, { rounds, keys }: Pick<Asked, 'rounds' | 'keys'>): Asked {
  const text = peer.textOf(editing.weighing().resolved.records.map(recordJson));
  const figure = text.indexOf('"4.3"', text.length / 3) + 1 || text.indexOf('4.3', text.length / 3);
  const struck = struckTexts(text, figure);
  return {
    label: peer.label,
    lines: text.split('\n').length,
    rounds,
    keys,
    whole: (round) => peer.check(`${text}${'\n'.repeat(round % 50)}`),
    keystroke: (round) => peer.check(struck(round)),
    completion: (round) => peer.complete(struck(round), figure + 1),
    files: async () => {
      const kept: unknown[] = [];
      for (const one of manyFiles(FILES).texts.values()) kept.push(await peer.check(peer.textOf(recordsOf(one).map(recordJson))));
      return kept;
    },
  };
}

function recordsOf(text: string): readonly Record[] {
  return parse('bench', text).blocks.flatMap((block) => readBlock(block).records);
}
