/** Text that Markdown must not take for its own signs. */
export function plain(text: string): string {
  return text.replace(/[\\*_`<>|[\]]/g, (sign) => `\\${sign}`);
}

/** A piece of a file inside a sentence or a table. */
export function code(text: string): string {
  return `\`${text.replace(/\|/g, '\\|')}\``;
}

/** Lines of a file. */
export function fence(text: string): string {
  return `\`\`\`yard\n${text.replace(/\n$/, '')}\n\`\`\``;
}

export function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}

/** `a, b or c` */
export function oneOf(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} or ${items[items.length - 1] ?? ''}`;
}

export function sentenceCase(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1).replace(/\.$/, '')}.`;
}
