import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { createLanguageService, resolveWithin, type LanguageService } from '../../src/service/index.js';
import { diceFor } from '../../src/tools/fuzz/dice.js';
import { mutated } from '../../src/tools/fuzz/mutate.js';
import { NAMED_KINDS } from '../../src/estimate/named-records.js';
import { largeEstimate } from '../../src/tools/bench/large-estimate.js';

// A service keeps very much from one keystroke to the next. Whatever is typed, taken back and typed again, it says what one says that never saw the file before.

const ROOT = '/desk';
const JOB = `${ROOT}/job.yard`;
const SHOP = `${ROOT}/shop.yard`;
const shopText = readFileSync('samples/shop.yard', 'utf8');
const samples = readdirSync('samples').filter((name) => name.endsWith('.yard') && name !== 'shop.yard');

function serviceOver(texts: ReadonlyMap<string, string>): LanguageService {
  return createLanguageService({
    read: (uri) => {
      const text = texts.get(uri);
      return text === undefined ? 'missing' : { text };
    },
    resolvePath: (from, written) => resolveWithin(ROOT, from, written),
  });
}

/** All that a service says of the estimate, with the place of each thing in its file. */
function saidBy(service: LanguageService): unknown {
  const { resolved, comparison } = service.weighing(JOB);
  const at = (span: Parameters<LanguageService['place']>[0] | undefined) => (span === undefined ? undefined : service.place(span));
  const { estimate, scope } = resolved;
  return {
    problems: [...service.allDiagnostics(JOB)],
    names: NAMED_KINDS.map((kind) => [...scope.namesOf(kind)].map(([name, record]) => [name, at(record.at)])),
    work: estimate.labour.map((job) => [job.name, at(job.at), job.modes.map((mode) => [String(mode.hours.likely), mode.with.map((way) => at(way.at))]), job.needs.map((one) => at(one.at)), job.parts.map((one) => at(one.at)), at(job.rate?.at)]),
    ways: estimate.access.map((way) => [way.name, at(way.at), way.includes.map((one) => at(one.at)), way.parts.map((one) => at(one.at))]),
    parts: estimate.parts.map((part) => [part.name, at(part.at), part.price?.likely.toFixed(), part.cost?.likely.toFixed()]),
    chances: [...estimate.chances].map(([record, chances]) => [at(record.at), chances.map((one) => [one.title, at(one.at), one.labour.map((job) => at(job.at))])]),
    options: comparison.options.map(({ option, complete, totals, inAll, ready, penalty, planned, open }) => ({
      name: option.name, complete, ready: ready.date, penalty: penalty.money.likely.toFixed(), inAll: [inAll.low, inAll.likely, inAll.high].map((one) => one.toFixed()),
      ways: [planned.chosen, ...planned.others].map((plan) => plan.paid.map((way) => way.name)),
      lines: totals.lines.map(({ title, amount, at: span }) => [title, amount.likely.toFixed(), amount.low.toFixed(), amount.high.toFixed(), at(span)]),
      taxes: totals.taxes.map(({ amount }) => amount.likely.toFixed()),
      bay: [ready.circle, ready.proven, ready.latest, ...ready.tasks.map(({ task, start, end, technician, slack, from, to }) => [task.id, task.kind, task.after, task.length.likely.toFixed(), at(task.at), start, end, technician, slack, from, to])],
      open: open.map(({ job, now, alone }) => [job.title, now.likely.toFixed(), alone.likely.toFixed()]),
    })),
    stages: comparison.stages.map(({ stage }) => at(stage.at)),
    uses: resolved.uses,
    spoiled: [...resolved.spoiled].map((block) => block.text),
  };
}

describe.each(samples)('typing in %s', (sample) => {
  const original = readFileSync(`samples/${sample}`, 'utf8');

  test.each([1, 2, 3])('says after each of many edits what a fresh service says (seed %i)', (seed) => {
    const dice = diceFor(seed, 0);
    const texts = new Map([[JOB, original], [SHOP, shopText]]);
    const service = serviceOver(texts);
    const before = [original];
    for (let step = 0; step < 25; step++) {
      const text = texts.get(JOB) as string;
      if (dice.chance(10)) texts.set(SHOP, dice.chance(50) ? shopText : mutated(shopText, 1, dice, text));
      else texts.set(JOB, dice.chance(35) ? dice.pick(before) : mutated(text, 1, dice, original));
      before.push(texts.get(JOB) as string);
      expect(saidBy(service), `step ${step}`).toEqual(saidBy(serviceOver(texts)));
    }
  });
});

test.each<[string, string]>([['a long estimate', largeEstimate(600)], ...samples.map((sample): [string, string] => [sample, readFileSync(`samples/${sample}`, 'utf8')])])('figures of %s, typed one after the other, are those of the text that is there', (_, original) => {
  const dice = diceFor(4, 0);
  const texts = new Map([[JOB, original], [SHOP, shopText]]);
  const service = serviceOver(texts);
  for (let step = 0; step < 20; step++) {
    const text = texts.get(JOB) as string;
    const figures = [...text.matchAll(/\d(?=(?:\.\d+)? h|\.\d\d )/g)];
    const { index } = dice.pick(figures);
    texts.set(JOB, text.slice(0, index) + String(1 + dice.upTo(8)) + text.slice(index + 1));
    expect(saidBy(service), `step ${step}`).toEqual(saidBy(serviceOver(texts)));
  }
});

// Each is typed, read, typed with another line, taken back, and read again: what is kept by its place must follow it there and away.
test.each([
  ['a currency at a price', 'cost 92.00 new  warranty', 'cost 92.00 CAD new  warranty'],
  ['the shop’s own currency at a price', '2 at 11.40 new', '2 at 11.40 USD new'],
  ['an allowance', '# due soon, and in reach while it is open', '# allow no-such-code: the customer asked'],
  ['a chance below a job', '  uses     pump, coolant', '  uses     pump, coolant\n  chance "A stud breaks" 10%\n    labour "Drill it out" 1.0 h'],
  ['a chance taken out', '  chance       cracked "The head is cracked between the seats"  12%\n    part "Bare head casting"  cost 690.00 used  arrives 5 d\n', ''],
  ['another kind of line', 'sublet head-work', 'part head-work'],
  ['a name changed', 'labour tensioner', 'labour tensioner-two'],
  ['a name taken by another', 'part pump ', 'part tensioner '],
  ['a line no longer at the edge', '\nlabour accept', '\n  labour accept'],
  ['a line that starts a block', '  class  electrical', '  class  electrical\nfee late "Late" 5.00'],
  ['a file used', 'use "shop.yard"', 'use "other.yard"'],
  ['a second file used', '# Ways in', 'use "other.yard"\n# Ways in'],
  ['the form', 'steelyard 1', 'steelyard 2'],
  ['a second form', '# Ways in', 'steelyard 1\n# Ways in'],
  ['a job that a job needs', '  uses   tensioner', '  uses   tensioner\n  needs  pump'],
  ['a line that can’t be read', 'labour swap "Swap engine', 'lobour swap "Swap engine'],
  ['a title left out', 'labour pump "Coolant pump: replace"', 'labour pump'],
  ['a job left out of an option', 'do          diagnosis, rear-head, pump, road-test', 'do          diagnosis, rear-head, road-test'],
  ['everything behind it gone', '# Before deciding', 'option last "Last" do pump\n#'],
])('%s', (_, from, to) => {
  const original = readFileSync('samples/pilgrim-v6.yard', 'utf8');
  expect(original).toContain(from);
  const texts = new Map([[JOB, original], [SHOP, shopText], [`${ROOT}/other.yard`, `${shopText}\nlabour alone "Alone" 1 h\n`]]);
  const service = serviceOver(texts);
  const other = (text: string) => text.replace('takes    9.0 h', 'takes    8.0 h');
  for (const text of [original, original.replace(from, to), other(original.replace(from, to)), other(original), original, original.replace(from, to), original]) {
    texts.set(JOB, text);
    expect(saidBy(service)).toEqual(saidBy(serviceOver(texts)));
  }
});
