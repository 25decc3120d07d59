import { closeSync, fstatSync, mkdtempSync, openSync, readSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { readWhole, type Disk, type Read } from '../../src/cli/read-whole.js';
import { readStandardInput } from '../../src/cli/standard-input.js';
import { textOf } from '../../src/cli/text-of.js';

const folder = mkdtempSync(path.join(tmpdir(), 'steelyard-reading-'));
const file = path.join(folder, 'job.yard');
afterAll(() => rmSync(folder, { recursive: true }));

const disk: Disk = { statSync, openSync, fstatSync, readSync, closeSync };
/** An error as a system gives it; the numbers and words are those of POSIX. */
const failing = (code: string, says: string) => (): never => {
  throw Object.assign(new Error(`${code}: ${says}`), { code, syscall: 'read' });
};

describe('a disk that fails', () => {
  test.each([
    ['looking at it', 'statSync', 'EIO', /could not be read: the disk, or the way to it, failed \(EIO\)/],
    ['opening it', 'openSync', 'EIO', /failed \(EIO\)\. Try again/],
    ['reading it', 'readSync', 'EIO', /failed \(EIO\)\. Try again/],
    ['opening it', 'openSync', 'EACCES', /may not be read by you/],
    ['opening it', 'openSync', 'EPERM', /may not be read by you/],
    ['opening it', 'openSync', 'EMFILE', /could not be read: EMFILE: too many open files/],
    ['looking at it', 'statSync', 'ELOOP', /is a link that leads round in a circle/],
    ['reading it', 'readSync', 'ESTALE', /could not be read: ESTALE/],
  ] as const)('at %s (%s, %s) gives a reason and no text', (_, call, code, says) => {
    writeFileSync(file, 'steelyard 1\n');
    expect(readWhole(file, 1_000, { ...disk, [call]: failing(code, code === 'EMFILE' ? 'too many open files' : 'of a test') })).toEqual({ kind: 'unreadable', why: expect.stringMatching(says) as string });
  });

  test.each(['openSync', 'readSync', 'fstatSync'] as const)('leaves nothing open after %s failed', (call) => {
    writeFileSync(file, 'steelyard 1\n');
    const open = new Set<number>();
    const counted: Disk = { ...disk, openSync: (...args) => { const one = openSync(...args); open.add(one); return one; }, closeSync: (one) => { open.delete(one); closeSync(one); } };
    readWhole(file, 1_000, { ...counted, [call]: failing('EIO', 'of a test') });
    expect(open.size).toBe(0);
  });

  test('a file that is gone between the look and the opening is missing', () => {
    writeFileSync(file, 'steelyard 1\n');
    const found = readWhole(file, 1_000, { ...disk, openSync: (...args) => { rmSync(file); return openSync(...args); } });
    expect(found).toEqual({ kind: 'missing' });
  });
});

/** Reads one byte, then something happens to the file, so many times. */
function meanwhile(happens: (time: number) => void, times: number): Disk {
  let left = times;
  return { ...disk, readSync: ((open: number, into: Buffer, offset: number, length: number, position: null) => {
    const count = readSync(open, into, offset, Math.min(length, 1), position);
    if (left > 0) happens(left--);
    return count;
  }) as Disk['readSync'] };
}

describe('a file that changes while it is read', () => {
  const written = (time: number) => writeFileSync(file, `version ${time}${'+'.repeat(time)}\n`);

  test.each([
    ['is written anew', written, 1, 'version 1+\n'],
    ['is written anew twice', written, 2, 'version 1+\n'],
    ['is cut short', () => truncateSync(file, 4), 1, 'old,'],
    ['grows', () => writeFileSync(file, ' and more', { flag: 'a' }), 1, 'old, of some length and more'],
    ['is emptied and filled again', () => { truncateSync(file, 0); writeFileSync(file, 'new'); }, 1, 'new'],
  ] as const)('that %s is read as it is in the end, and never half of each', (_, happens, times, text) => {
    writeFileSync(file, 'old, of some length');
    const found = readWhole(file, 1_000, meanwhile(happens, times));
    expect(found.kind === 'read' ? found.bytes.toString() : found).toBe(text);
  });

  test('and goes on changing is given up, in a sentence', () => {
    writeFileSync(file, 'old');
    expect(readWhole(file, 1_000, meanwhile(written, 100))).toEqual({ kind: 'unreadable', why: expect.stringMatching(/^changes while it is read\. Wait until/) as string });
  });

  test('and grows beyond the limit is too large, and no more than the limit is taken', () => {
    writeFileSync(file, 'small');
    let most = 0;
    const watched: Disk = { ...disk, readSync: ((open: number, into: Buffer, offset: number, length: number, position: null) => {
      most = Math.max(most, into.length);
      writeFileSync(file, 'x'.repeat(5_000));
      return readSync(open, into, offset, length, position);
    }) as Disk['readSync'] };
    expect(readWhole(file, 1_000, watched)).toMatchObject({ kind: 'too-large' });
    expect(most).toBeLessThanOrEqual(1_001);
  });
});

const estimate = 'steelyard 1\noption a "Überholen"\n  part "P" 5.00 new\n';
const utf16be = (text: string): Buffer => Buffer.from(text, 'utf16le').swap16();
const UTF16 = /^is text in UTF-16, not in UTF-8\. Save it in UTF-8 and try again\.$/;
const NOT_UTF8 = /^is not text in UTF-8\. Save it in UTF-8 and try again\.$/;

describe('bytes that are no text in UTF-8', () => {
  // Marks and ill-formed sequences: The Unicode Standard, chapters 3.9 (tables 3-7 and 3-8) and 23.8; from memory.
  test.each([
    ['UTF-16, little end first, with its mark', Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(estimate, 'utf16le')]), UTF16],
    ['UTF-16, big end first, with its mark', Buffer.concat([Buffer.from([0xfe, 0xff]), utf16be(estimate)]), UTF16],
    ['UTF-16, little end first, without a mark', Buffer.from(estimate, 'utf16le'), UTF16],
    ['UTF-16, big end first, without a mark', utf16be(estimate), UTF16],
    ['the mark of UTF-16 alone', Buffer.from([0xff, 0xfe]), UTF16],
    ['Latin-1', Buffer.from(estimate, 'latin1'), NOT_UTF8],
    ['a lone high surrogate', Buffer.from([0x23, 0xed, 0xa0, 0x80, 0x0a]), NOT_UTF8],
    ['a lone low surrogate', Buffer.from([0x23, 0xed, 0xb0, 0x80, 0x0a]), NOT_UTF8],
    ['a pair of surrogates, each by itself', Buffer.from([0xed, 0xa0, 0xbd, 0xed, 0xb8, 0x80]), NOT_UTF8],
    ['a letter that breaks off at the end', Buffer.from('# é').subarray(0, 3), NOT_UTF8],
    ['a letter written too long', Buffer.from([0x23, 0xc0, 0xaf, 0x0a]), NOT_UTF8],
    ['a byte that goes on with nothing', Buffer.from([0x23, 0x80, 0x0a]), NOT_UTF8],
    ['beyond the last letter', Buffer.from([0xf4, 0x90, 0x80, 0x80]), NOT_UTF8],
    ['a file of zeros', Buffer.alloc(5_000), /^holds nothing but zeros, as after a machine stopped while it was written\. Take it from another copy\.$/],
  ])('%s', (_, bytes, says) => {
    expect(textOf(bytes)).toEqual({ kind: 'no-text', why: expect.stringMatching(says) as string });
  });

  test.each([
    ['nothing at all', ''], ['an estimate', estimate], ['with the mark of UTF-8', `\ufeff${estimate}`], ['one zero among letters, which the language tells of', estimate.replace('P', 'P\u0000')],
    ['letters of all lengths', 'a\u00e9\u20ac\u{1f600}'], ['the last letter there can be', '\u{10ffff}'],
  ])('but text is text, to the last byte: %s', (_, text) => {
    expect(textOf(Buffer.from(text))).toEqual({ kind: 'text', text });
  });
});

describe('standard input', () => {
  const over = (bytes: Buffer, each = bytes.length): Read => {
    let at = 0;
    return (_, into, offset, length) => {
      const count = bytes.copy(into, offset, at, Math.min(at + each, at + length));
      at += count;
      return count;
    };
  };

  test('that comes in pieces, with nothing there for a while, is taken whole', () => {
    const read = over(Buffer.from(estimate), 7);
    let asked = 0;
    expect(readStandardInput((...args) => (asked++ % 2 === 0 ? failing('EAGAIN', 'nothing yet')() : read(...args)))).toBe(estimate);
  });

  test('that ends with an error where others end with nothing is taken whole', () => {
    const read = over(Buffer.from(estimate));
    expect(readStandardInput((...args) => read(...args) || failing('EOF', 'end of file')())).toBe(estimate);
  });

  test.each([
    [() => failing('EIO', 'of a test')(), /^Standard input could not be read: the disk, or the way to it, failed/],
    [() => failing('EISDIR', 'of a test')(), /^Standard input is a folder, not a file\.$/],
    [over(Buffer.from('# \u00e9', 'latin1')), /^Standard input is not text in UTF-8/],
    [over(Buffer.from(estimate, 'utf16le')), /^Standard input is text in UTF-16/],
    [(_: number, into: Buffer, offset: number, length: number) => { into.fill(0x23, offset, offset + length); return length; }, /^Standard input is larger than an estimate can be \(8 MB\)\.$/],
  ] as const)('says why it is none (%#)', (read, says) => {
    expect(() => readStandardInput(read)).toThrow(says);
  });
});
