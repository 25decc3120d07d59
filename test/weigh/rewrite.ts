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

/** The text as for an engine on a stand: every way in is there and costs nothing. Nothing is pinned. */
export function onStand(text: string): string {
  return blocks(unpinned(text)).map((lines) => (/^access\b/.test(lines[0] as string) ? lines.filter((line, i) => i === 0 || /^ {2}includes\b/.test(line)) : lines).join('\n')).join('\n');
}
