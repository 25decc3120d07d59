import { readSync } from 'node:fs';
import { InputError, LARGEST } from './files.js';
import { bytesOf, codeOf, whyUnreadable, type Read } from './read-whole.js';
import { textOf } from './text-of.js';

/** Milliseconds between two looks at an input that has nothing yet. */
const PAUSE = 20;

/** What comes in on standard input, to its end. Throws InputError where that is no estimate's text. */
export function readStandardInput(read: Read = readSync): string {
  const bytes = bytesIn(waiting(read));
  if (bytes.length > LARGEST) throw new InputError(`Standard input is larger than an estimate can be (${LARGEST / 1_000_000} MB).`);
  const text = textOf(bytes);
  if (text.kind !== 'text') throw new InputError(`Standard input ${text.why}`);
  return text.text;
}

function bytesIn(read: Read): Buffer {
  try {
    return bytesOf(0, LARGEST + 1, read);
  } catch (error) {
    throw new InputError(`Standard input ${whyUnreadable(error)}`);
  }
}

/** A program that writes slowly may have left the input so that nobody is made to wait for it; one system ends it with an error. */
function waiting(read: Read): Read {
  return (...args) => {
    for (;;) {
      try {
        return read(...args);
      } catch (error) {
        if (codeOf(error) === 'EOF') return 0;
        if (codeOf(error) !== 'EAGAIN') throw error;
        Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE);
      }
    }
  };
}
