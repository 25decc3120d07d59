import { createLanguageService, resolveWithin, type LanguageService } from '../../service/index.js';
import { exampleBook } from '../../service/book/example-book.js';

const ROOT = '/fuzz';

export function uriOf(name: string): string {
  return `${ROOT}/${name}`;
}

/** A service over files in memory that may be changed behind it, as an editor does. */
export interface Desk {
  readonly service: LanguageService;
  readonly set: (name: string, text: string) => void;
}

export function deskOver(files: ReadonlyMap<string, string>): Desk {
  const texts = new Map([...files].map(([name, text]) => [uriOf(name), text]));
  const service = createLanguageService({
    read: (uri) => {
      const text = texts.get(uri);
      return text === undefined ? 'missing' : { text };
    },
    resolvePath: (from, written) => resolveWithin(ROOT, from, written),
    files: () => [...texts.keys()],
    book: exampleBook,
  });
  return { service, set: (name, text) => void texts.set(uriOf(name), text) };
}
