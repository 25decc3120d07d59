/** Text of a snippet in which everything but the tab stops stands for itself. */
export function escaped(text: string): string {
  return text.replace(/[\\$}]/g, '\\$&');
}

export function stop(number: number, text: string): string {
  return `\${${number}:${escaped(text)}}`;
}

/** A snippet as it stands where every tab stop keeps its default text. */
export function withDefaults(snippet: string): string {
  return snippet.replace(/\$\{\d+:((?:\\[\\$}]|[^}\\])*)\}|\\([\\$}])/g, (_, inside: string | undefined, alone: string | undefined) => alone ?? (inside ?? '').replace(/\\([\\$}])/g, '$1'));
}

/**
 * Turns a written-out text into a snippet: `[[6.5]]` is a tab stop of its own, and every `{{pump}}` of one name is the
 * same tab stop, so that a name typed over changes where it is used too.
 */
export function fromTemplate(template: string): string {
  const linked = new Map<string, number>();
  let last = 0;
  return template.split(/(\[\[[^[\]]*\]\]|\{\{[^{}]*\}\})/).map((piece) => {
    const text = piece.slice(2, -2);
    if (piece.startsWith('[[')) return stop(++last, text);
    if (!piece.startsWith('{{')) return escaped(piece);
    const number = linked.get(text) ?? ++last;
    linked.set(text, number);
    return stop(number, text);
  }).join('');
}
