import { describe, expect, test } from 'vitest';
import type { Completion } from '../../../src/service/index.js';
import { allKinds, fileKinds, type Kind } from '../../../src/vocabulary/index.js';
import { ruleByCode } from '../../../src/service/registry.js';
import { accepted, BENCH, cursorIn, URI } from './cursor.js';
import { serviceOver } from '../../support/fixture.js';

/** Heads of the lines that a kind stands below, the outermost first: as short as they are read. */
function headsAbove(kind: Kind): string[] {
  if (fileKinds.includes(kind)) return [];
  const parent = allKinds.find((one) => one.children.includes(kind)) as Kind;
  return [...headsAbove(parent), headOf(parent)];
}

function headOf(kind: Kind): string {
  return (kind.example.split('\n')[0] as string).replace(/("[^"]*").*$/, '$1');
}

const indented = (lines: readonly string[]) => lines.map((line, depth) => `${'  '.repeat(depth)}${line}\n`).join('');

/** For each kind: below its head, behind its head, behind its word alone, and behind each lead word below it. */
const places = allKinds.flatMap((kind) => {
  const above = headsAbove(kind);
  const head = headOf(kind);
  const edge = '  '.repeat(above.length);
  const leads = [...kind.leads.keys()].filter((lead) => !head.includes(` ${lead} `));
  return [
    { place: `below ${head}`, above: indented([...above, head]), typed: `${edge}  ` },
    { place: `behind ${head}`, above: indented(above), typed: `${edge}${head} ` },
    { place: `behind ${kind.word}`, above: indented(above), typed: `${edge}${kind.word} ` },
    ...leads.map((lead) => ({ place: `below ${head}, behind ${lead}`, above: indented([...above, head]), typed: `${edge}  ${lead} ` })),
  ];
});
const all = [{ place: 'at the left edge', above: '', typed: '' }, ...places];
const estimates = [['an empty estimate', 'steelyard 1\n'], ['an estimate with a shop, work and an option', BENCH]] as const;

function errorsIn(text: string) {
  return serviceOver({ 'estimate.yard': text }).service.diagnostics(URI).filter(({ severity }) => severity === 'error');
}

/** Errors that an offer brings on the lines that it writes: those whose code was not told while the line was typed. */
function brought(base: string, above: string, typed: string): readonly Brought[] {
  const key = [base, above, typed].join('|');
  const found = known.get(key) ?? broughtIn(base, above, typed);
  known.set(key, found);
  return found;
}

interface Brought {
  readonly offer: Completion;
  readonly codes: readonly string[];
}

const known = new Map<string, readonly Brought[]>();

function broughtIn(base: string, above: string, typed: string): readonly Brought[] {
  const { text, offers } = cursorIn(`${base}${above}${typed}$0\n`);
  const before = new Set(errorsIn(typed.trim() === '' ? base + above : text).map(({ code }) => code));
  return offers.map((offer) => {
    const codes = errorsIn(accepted(text, offer)).filter(({ code, range }) => range.end >= base.length + above.length && !before.has(code)).map(({ code }) => code);
    return { offer, codes };
  });
}

/** The head of a line ends behind its name or title, and the writer goes on there: what it lacks is a figure, or the line below. */
const LACKING = ['hours-missing', 'price-missing', 'fee-unclear', 'tax-unclear', 'percent-missing', 'amount-missing', 'inspect-finds-nothing'];

/** Why an offer may bring an error that is none of its form; undefined where nothing says so. */
function reason(code: string, { kind, label, detail, edit }: Completion, base: string): string | undefined {
  if (code === 'unknown-name' && /^there is no [a-z ]+ line yet$/.test(detail ?? '')) return 'nothing to name yet, and the list says so';
  if (code === 'use-missing' && label === 'use') return 'which file is the writer’s';
  if (code === 'stage-out-of-reach' && (kind === 'name' || label === 'do')) return 'which work is the writer’s';
  if (code === 'amount-missing' && kind === 'name') return 'what it really took only the writer knows';
  if (code === 'no-rate' && base !== BENCH) return 'there is no shop yet';
  return kind === 'kind' && /("|\})$/.test(edit.text) && LACKING.includes(code) ? 'the writer goes on behind the title' : undefined;
}

describe.each(estimates)('in %s, with what is to be filled in as it stands', (_, base) => {
  test.each(all)('what is taken $place is well formed', ({ above, typed }) => {
    const shapes = brought(base, above, typed).flatMap(({ offer, codes }) => codes.filter((code) => ruleByCode.get(code)?.family === 'shape' && reason(code, offer, base) === undefined).map((code) => `${offer.label}: ${code}`));
    expect(shapes).toEqual([]);
  });

  test.each(all)('what is taken $place holds, or is known to wait', ({ above, typed }) => {
    const wrong = brought(base, above, typed).flatMap(({ offer, codes }) => codes.filter((code) => reason(code, offer, base) === undefined).map((code) => `${offer.label}: ${code}: ${offer.edit.text}`));
    expect(wrong).toEqual([]);
  });
});

test('every reason is met, so none can hide a fault that is gone', () => {
  const met = new Set(estimates.flatMap(([, base]) => all.flatMap(({ above, typed }) => brought(base, above, typed).flatMap(({ offer, codes }) => codes.map((code) => reason(code, offer, base))))));
  expect([...met].sort()).toEqual(['nothing to name yet, and the list says so', 'the writer goes on behind the title', 'there is no shop yet', 'what it really took only the writer knows', 'which file is the writer’s', 'which work is the writer’s']);
});

test('whole records hold in an estimate that has what they name', () => {
  const base = `${BENCH}labour strip "Strip" 3 h with out\n  chance cracked "It is cracked" 12%\n`;
  const snippets = brought(base, '', '').filter(({ offer }) => offer.label.endsWith(' …'));
  expect(snippets.map(({ offer }) => offer.label)).toContain('inspect …');
  expect(snippets.filter(({ codes }) => codes.length > 0)).toEqual([]);
});

test('the first line of a file has nothing that the next key could take away', () => {
  const first = cursorIn('$0').offers.find(({ label }) => label === 'steelyard');
  expect(first).toMatchObject({ snippet: false, edit: { text: 'steelyard 1' } });
});
