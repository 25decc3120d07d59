/** The blocks of a text that has one line for one fact: a line at the left edge and all that is indented below it. */
function blocks(text: string): string[][] {
  const found: string[][] = [];
  for (const line of text.split('\n')) {
    if (/^\s/.test(line)) found[found.length - 1]?.push(line);
    else found.push([line]);
  }
  return found;
}

/** The text without any `way` line: nothing is pinned. */
export function unpinned(text: string): string {
  return text.split('\n').filter((line) => !/^ {2}way\b/.test(line)).join('\n');
}

/** The text as for an engine on a stand: every way in costs nothing, and every option has them all. Inspections go: they may name a chance of a way in. */
export function onStand(text: string): string {
  const all = blocks(unpinned(text));
  const ways = all.flatMap(([head]) => /^access (\S+)/.exec(head as string)?.[1] ?? []);
  return all.filter(([head]) => !/^inspect\b/.test(head as string)).map(([head, ...below]) => {
    if (/^access\b/.test(head as string)) return [head, ...below.filter((line) => /^ {2}includes\b/.test(line))].join('\n');
    if (/^option\b/.test(head as string) && ways.length > 0) return [head, `  way ${ways.join(', ')}`, ...below].join('\n');
    return [head, ...below].join('\n');
  }).join('\n');
}
