import type { Input } from './input.js';

/** The smallest input found that still fails in the same way: files, lines, then characters are left out while it does. */
export function shrunk(input: Input, fails: (smaller: Input) => boolean, patience: number): Input {
  const until = performance.now() + patience;
  let least = input;
  const attempt = (smaller: Input): boolean => {
    if (performance.now() > until || !fails(smaller)) return false;
    least = smaller;
    return true;
  };
  const before = (text: string): Input => ({ ...least, before: text });
  if (!attempt(before(''))) attempt(before(least.files.get(least.name) ?? ''));
  for (const name of [...least.files.keys()]) {
    if (name !== least.name) attempt({ ...least, files: new Map([...least.files].filter(([other]) => other !== name)) });
  }
  for (const joined of ['\n', '']) {
    for (const name of least.files.keys()) {
      reduce(() => least.files.get(name) ?? '', joined, (text) => attempt({ ...least, files: new Map([...least.files, [name, text]]) }), () => performance.now() > until);
    }
    reduce(() => least.before, joined, (text) => attempt(before(text)), () => performance.now() > until);
  }
  return least;
}

/** Leaves out runs of parts, long ones first. */
function reduce(text: () => string, joined: string, attempt: (shorter: string) => boolean, late: () => boolean): void {
  for (let size = Math.ceil(text().split(joined).length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2)) {
    for (let at = 0; !late();) {
      const all = text().split(joined);
      if (at >= all.length) break;
      const shorter = [...all.slice(0, at), ...all.slice(at + size)].join(joined);
      if (shorter === text() || !attempt(shorter)) at += size;
    }
  }
}
