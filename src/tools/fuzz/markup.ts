import { Broken } from './claim.js';

/** Elements that have no end tag. Source: HTML Living Standard, 13.1.2 "Elements", void elements; from memory. */
const VOID = new Set(['area', 'base', 'br', 'col', 'embed', 'hr', 'img', 'input', 'link', 'meta', 'source', 'track', 'wbr']);

/** Markup as this product writes it: attributes in double quotes, every element closed in its turn, `<` and `&` of texts escaped. */
export function wellFormed(claim: string, markup: string): void {
  const open: string[] = [];
  const piece = /<!doctype html>|<style>[^<]*<\/style>|<(\/?)([a-zA-Z][\w-]*)((?:\s+[\w:-]+(?:="[^"<]*")?)*)\s*(\/?)>|[^<&]+|&(?:amp|lt|gt|quot|nbsp|#\d+|#x[\da-f]+);/giy;
  for (let at = 0; at < markup.length; at = piece.lastIndex) {
    piece.lastIndex = at;
    const found = piece.exec(markup);
    if (found === null) throw new Broken(claim, `no markup at ${at}: ${JSON.stringify(markup.slice(Math.max(0, at - 60), at + 60))}`);
    const [, end, name, attributes, empty] = found;
    if (name === undefined) continue;
    const names = [...(attributes ?? '').matchAll(/([\w:-]+)(?:="[^"]*")?/g)].map((one) => one[1]);
    if (new Set(names).size !== names.length) throw new Broken(claim, `an attribute twice: ${found[0]}`);
    if (end === '') {
      if (empty === '' && !VOID.has(name)) open.push(name);
    } else if (open.pop() !== name) throw new Broken(claim, `${found[0]} closes what is not open, at ${at}`);
  }
  if (open.length > 0) throw new Broken(claim, `never closed: ${open.join(', ')}`);
}
