import { describe, expect, test } from 'vitest';
import { called, resolved, told, wordsOf } from './estimated.js';

const BASE = `steelyard 1
shop "S"
  rate bench 100.00 usual
  rate body 90.00
access front "Front off"
  remove 1 h
access low "From below"
  remove 1 h
access deep "Deep"
  remove 1 h
  includes low
access free "Free"
  refit 1 h
labour strip "Strip" 2 h with front
  uses set, wash
labour both "Both" 2 h with front, low
labour bare "Bare" 1 h
part set "Set" 4.00 new
sublet wash "Wash" 9.00
option a "A"
  do bare
`;
const read = (text: string) => resolved(BASE + text);
const stage = (...below: readonly string[]) => read(`stage look "Look"\n${below.map((line) => `  ${line}\n`).join('')}`);

describe('a stage', () => {
  test('has its work with what that brings, the ways it opens, and what putting back takes', () => {
    const one = stage('do strip', 'opens front', 'put back 3.5 h', 'class body', 'destroys set');
    expect(told(one)).toEqual([]);
    const [look] = one.estimate.stages;
    expect([look?.labour, look?.parts, look?.sublets, look?.opens, look?.destroys].map((list) => called(list ?? []))).toEqual([['strip'], ['set'], ['wash'], ['front'], ['set']]);
    expect([look?.name, look?.title, look?.putBack?.likely.toFixed(), look?.rate?.name]).toEqual(['look', 'Look', '3.5', 'body']);
    expect(stage('opens front').estimate.stages[0]).toMatchObject({ labour: [], rate: undefined, putBack: undefined, destroys: [] });
  });

  test('is in every option, before its own work', () => {
    const [a] = stage('do strip', 'opens front', 'put back 1 h').estimate.options;
    expect([called(a?.labour ?? []), called(a?.parts ?? []), called(a?.staged?.labour ?? []), called(a?.staged?.ways ?? []), a?.staged?.then]).toEqual([['strip', 'bare'], ['set'], ['strip'], ['front'], 'closed']);
  });

  test('without work and without a way has nothing to authorise', () => {
    expect(told(stage('put back 1 h'))).toEqual([['stage-empty', 'stage look "Look"']]);
    expect(told(stage('opens front'))).toEqual([]);
    expect(told(stage('put back 1h')).map(([code]) => code)).toEqual(['glued-unit']);
  });

  test('that takes things apart says how long putting back takes', () => {
    expect(told(stage('do bare'))).toEqual([['stage-without-put-back', 'stage look "Look"']]);
    expect(told(stage('do bare', 'put back 1h')).map(([code]) => code)).toEqual(['glued-unit']);
  });

  test('that opens a way in which takes no time is told where it names it', () => {
    expect(told(stage('opens front, free'))).toEqual([['stage-opens-free', 'free']]);
    expect(wordsOf(stage('opens front, free'), 'stage-opens-free')).toContain('free has no hours');
  });

  test('does its work with what it opens, and what that includes', () => {
    expect(told(stage('do strip', 'put back 1 h'))).toEqual([['stage-out-of-reach', 'strip']]);
    expect(wordsOf(stage('do strip', 'put back 1 h'), 'stage-out-of-reach')).toContain('Add what it takes to opens: front.');
    expect(told(stage('do both', 'opens front', 'put back 1 h'))).toEqual([['stage-out-of-reach', 'both']]);
    expect(wordsOf(stage('do both', 'opens front', 'put back 1 h'), 'stage-out-of-reach')).toContain('front and low.');
    expect(told(stage('do both', 'opens front, deep', 'put back 1 h'))).toEqual([]);
    expect(told(stage('do bare', 'put back 1 h'))).toEqual([]);
    const either = 'labour either "Either" 2 h with front\n  takes 3 h with low\n';
    expect(told(read(`${either}stage look "Look"\n  do either\n  opens low\n  put back 1 h\n`))).toEqual([]);
    expect(wordsOf(read(`${either}stage look "Look"\n  do either\n  put back 1 h\n`), 'stage-out-of-reach')).toContain('front, or low.');
  });

  test('is not said to be out of reach where something can’t be read, or a name is wrong', () => {
    expect(told(stage('do strip', 'opens frnt', 'put back 1 h')).map(([code]) => code)).toEqual(['unknown-name']);
    expect(told(stage('do strip', 'opens front 5', 'put back 1 h')).map(([code]) => code)).toEqual(['unknown-word']);
    const unsure = 'labour odd "Odd"\n  takes 2 h with low\n  takes 2h with front\n';
    expect(told(read(`${unsure}stage look "Look"\n  do odd\n  opens front\n  put back 1 h\n`)).map(([code]) => code)).toEqual(['glued-unit']);
    expect(told(read('labour odd "Odd"\n  takes 2 h with low\n  takes 2 h with nowhere\nstage look "Look"\n  do odd\n  opens front\n  put back 1 h\n')).map(([code]) => code)).toEqual(['unknown-name']);
    expect(told(read('labour odd "Odd"\nstage look "Look"\n  do odd\n  opens front\n  put back 1 h\n')).map(([code]) => code)).toEqual(['hours-missing']);
  });

  test('names each thing once', () => {
    expect(told(stage('do bare, bare', 'opens front, front', 'destroys set, set', 'put back 1 h')).map(([code, marked]) => [code, marked])).toEqual([['said-before', 'bare'], ['said-before', 'front'], ['said-before', 'set']]);
  });
});

describe('stages beside each other', () => {
  const two = (first: string, second: string) => read(`stage one "One"\n  ${first}\n  put back 1 h\nstage two "Two"\n  ${second}\n  put back 1 h\n`);

  test('do each work once, and open each way once', () => {
    expect(told(two('do bare', 'do bare'))).toEqual([['stage-twice', 'bare', 'stage one "One"']]);
    expect(wordsOf(two('do bare', 'do bare'), 'stage-twice')).toContain('done in stage one');
    expect(told(two('opens front', 'opens front'))).toEqual([['stage-twice', 'front', 'stage one "One"']]);
    expect(wordsOf(two('opens front', 'opens front'), 'stage-twice')).toContain('opened in stage one');
    expect(told(two('opens front', 'opens low'))).toEqual([]);
    expect(called(two('do bare', 'do bare').estimate.options[0]?.labour ?? [])).toEqual(['bare']);
  });

  test('there are up to twelve', () => {
    const many = (count: number) => read(Array.from({ length: count }, (_, i) => `labour j${i} "J" 1 h\nstage s${i} "S"\n  do j${i}\n  put back 1 h\n`).join(''));
    expect(told(many(12))).toEqual([]);
    const over = many(14);
    expect(told(over)).toEqual([['too-many-stages', 'stage s12 "S"']]);
    expect(wordsOf(over, 'too-many-stages')).toContain('up to 12');
    expect(over.estimate.stages).toHaveLength(12);
    expect([...over.spoiled].length).toBe(1); // no option is whole without the rest
  });

  test('of two with one name the first counts', () => {
    const same = read('stage one "One"\n  do bare\n  put back 1 h\nstage one "Two"\n  opens front\n');
    expect(told(same)).toEqual([['name-taken', 'one', 'one']]);
    expect(same.estimate.stages.map(({ title }) => title)).toEqual(['One']);
  });
});

describe('an option that pins its ways in', () => {
  const pinned = (way: string) => read(`stage look "Look"\n  opens front, low\noption p "P"\n  do bare\n  way ${way}\n`);

  test('has those that a stage opens', () => {
    expect(told(pinned('front, low, deep'))).toEqual([]);
    expect(told(pinned('low'))).toEqual([['pin-lacks-stage', 'low', 'stage look "Look"']]);
    expect(wordsOf(pinned('low'), 'pin-lacks-stage')).toContain('Option p pins its ways in without front, which stage look opens.');
    expect(wordsOf(pinned('in-car'), 'pin-lacks-stage')).toContain('front, low');
  });

  test('is planned freely where one of them is unknown', () => {
    expect(pinned('lwo').estimate.options[1]?.way).toBeUndefined();
    expect(told(pinned('lwo')).map(([code]) => code)).toEqual(['unknown-name']);
    expect(called(pinned('front, low').estimate.options[1]?.way ?? [])).toEqual(['front', 'low']);
    expect(pinned('in-car').estimate.options[1]?.way).toEqual([]);
  });
});
