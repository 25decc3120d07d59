import { describe, expect, test } from 'vitest';
import { TRIAL_VALUE } from '../../src/service/index.js';
import { FIGURE, readPageState, readToEditor, readToPage } from '../../src/page/messages.js';

const long = 'x'.repeat(5_000);
const nothing = [undefined, null, 0, '', 'ready', [], {}, () => 'ready', { kind: 'other' }, { kind: ['ready'] }, [{ kind: 'ready' }]];

describe('messages to the editor', () => {
  test.each([{ kind: 'ready' }, { kind: 'go', estimate: 'file:///a.yard', figure: 'used.total' }, { kind: 'try', estimate: 'file:///a.yard', figure: '.try “a”', value: '1500.50' }, { kind: 'write', estimate: 'file:///a.yard' }, { kind: 'back', estimate: 'file:///a.yard' }, { kind: 'unfold', estimate: 'file:///a.yard', row: '.row.total' }, { kind: 'fold', estimate: 'file:///a.yard', row: 'used.line.1' }])('%j is understood', (message) => {
    expect(readToEditor(message)).toEqual(message);
  });
  test.each([
    ...nothing,
    { kind: 'ready', more: 1 },
    { kind: 'go', estimate: 'file:///a.yard' },
    { kind: 'go', figure: 'used.total' },
    { kind: 'go', estimate: 'file:///a.yard', figure: 1 },
    { kind: 'go', estimate: '', figure: 'used.total' },
    { kind: 'go', estimate: 'file:///a.yard', figure: long },
    { kind: 'go', estimate: 'file:///a.yard', figure: 'used.total', command: 'x' },
    { kind: 'show', estimate: 'file:///a.yard', markup: '' },
    ...['-5', '1,000', '1e5', '', ' 5', '5\n', '5; rm', '1234567890123', '0.1234567', 5, ['5'], null].map((value) => ({ kind: 'try', estimate: 'file:///a.yard', figure: 'a', value })),
    { kind: 'try', estimate: 'file:///a.yard', value: '5', more: 1 },
    { kind: 'try', estimate: 'file:///a.yard', figure: long, value: '5' },
    { kind: 'write', estimate: 'file:///a.yard', figure: 'a' },
    { kind: 'write' },
    { kind: 'unfold', estimate: 'file:///a.yard', row: long },
    { kind: 'fold', estimate: 'file:///a.yard', figure: 'used.line.1' },
    { kind: 'unfold', estimate: 'file:///a.yard', row: 'a', all: true },
    { kind: 'back', estimate: long },
  ])('%j is dropped', (message) => {
    expect(readToEditor(message)).toBeUndefined();
  });
});

const tried = { id: '.try a', names: '“a” (price)', value: '5', uri: 'file:///a.yard', line: '  part "a" 4', nth: 0, column: 11, length: 1 };
const kept = { unfolded: ['.row.total'], tried: [tried] };
const spoiled = [undefined, {}, { unfolded: [] }, { unfolded: [], tried: [], more: 1 }, { unfolded: [1], tried: [] }, { unfolded: [], tried: [{}] }, { unfolded: [], tried: [{ ...tried, value: '1e5' }] }, { unfolded: [], tried: [{ ...tried, nth: -1 }] }, { unfolded: [], tried: [{ ...tried, line: long }] }, { unfolded: [], tried: [{ ...tried, more: 1 }] }];

describe('messages to the page', () => {
  test.each([
    { kind: 'show', estimate: 'file:///a.yard', markup: '<p>a</p>', kept }, { kind: 'here', estimate: 'file:///a.yard', rows: ['used.line.1'] }, { kind: 'here', estimate: 'file:///a.yard', rows: [] }, { kind: 'later', estimate: 'file:///a.yard', markup: '' }, { kind: 'seek', estimate: 'file:///a.yard', figure: 'used.total' },
  ])('%j is understood', (message) => {
    expect(readToPage(message)).toEqual(message);
  });
  test.each([...nothing, { kind: 'seek', estimate: 'file:///a.yard', markup: '' }, { kind: 'seek', estimate: 'file:///a.yard', figure: long }, { kind: 'later', estimate: 'file:///a.yard', figure: 'a' }, { kind: 'later', markup: '' }, { kind: 'later', estimate: 'file:///a.yard', markup: '', more: 1 }, { kind: 'show', estimate: 'file:///a.yard' }, { kind: 'show', estimate: 'file:///a.yard', markup: { a: 1 } }, { kind: 'show', estimate: 'a', markup: '', kept, style: '' }, { kind: 'here', estimate: 'a', rows: [1] }, { kind: 'here', estimate: 'a', rows: 'a' }, ...spoiled.map((one) => ({ kind: 'show', estimate: 'a', markup: '', kept: one })), { kind: 'ready' }])('%j is dropped', (message) => {
    expect(readToPage(message)).toBeUndefined();
  });
});

describe('what was kept of a page', () => {
  test('is understood', () => {
    const state = { estimate: 'file:///a.yard', scroll: 12.5, open: ['used'], ...kept };
    expect(readPageState(state)).toEqual(state);
  });
  test.each([...nothing, { estimate: 'a', scroll: 0, open: [] }, ...[{ scroll: -1 }, { scroll: Number.NaN }, { open: [1] }, { open: Array<string>(2_000).fill('a') }, { scroll: '0' }, { unfolded: 'a' }, { tried: [{ ...tried, column: 0.5 }] }].map((wrong) => ({ estimate: 'a', scroll: 0, open: [], ...kept, ...wrong }))])('%j is dropped', (state) => {
    expect(readPageState(state)).toBeUndefined();
  });
});

test('the page takes for a figure what the editor takes for one', () => {
  expect(FIGURE.source).toBe(TRIAL_VALUE.source);
});
