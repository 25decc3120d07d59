// Every regular expression of the product, found by the compiler, and texts that are hard for each.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

/** Where the source is; whoever runs this as a bundle from elsewhere says so. */
export const root = process.env['STEELYARD_ROOT'] ?? path.resolve(import.meta.dirname, '../..');

export interface Found {
  readonly where: string;
  readonly expression: RegExp;
}

/** Regular expressions as they are written, but for those of the tools, which read nothing from outside. */
export function expressionsOfSource(): Found[] {
  const files = readdirSync(path.join(root, 'src'), { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts') && !file.startsWith('tools'));
  return files.flatMap((file) => expressionsIn(file.split(path.sep).join('/'), readFileSync(path.join(root, 'src', file), 'utf8')));
}

export function expressionsIn(file: string, text: string): Found[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  const found: Found[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isRegularExpressionLiteral(node)) {
      const end = node.text.lastIndexOf('/');
      found.push({ where: `${file}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1}`, expression: new RegExp(node.text.slice(1, end), node.text.slice(end + 1)) });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** Expressions put together when the program runs, by file: each has its reason, and a new one is to be looked at. */
export function madeExpressions(): string[] {
  const files = readdirSync(path.join(root, 'src'), { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts') && !file.startsWith('tools'));
  return files.filter((file) => /\bnew RegExp\(|[^.]\bRegExp\(/.test(readFileSync(path.join(root, 'src', file), 'utf8'))).map((file) => file.split(path.sep).join('/')).sort();
}

/** Characters that an expression tells apart: those written in it, one of each class it names, and one that it knows nothing of. */
function alphabetOf({ source }: RegExp): string[] {
  const written = source
    .replace(/\\u\{([0-9a-f]+)\}|\\u([0-9a-f]{4})|\\x([0-9a-f]{2})/gi, (_, a?: string, b?: string, c?: string) => String.fromCodePoint(parseInt(a ?? b ?? c ?? '0', 16)))
    .replace(/\\s/g, ' \t\n').replace(/\\d/g, '07').replace(/\\w/g, 'a_').replace(/\\[SDWbB]|\./g, 'a').replace(/\\n/g, '\n').replace(/\\r/g, '\r').replace(/\\t/g, '\t').replace(/\\p\{[^}]*\}/gi, 'aé');
  return [...new Set([...written.replace(/\\(.)/g, '$1'), 'a', ' ', '!'])].slice(0, 18);
}

/** Runs of the words that an expression spells out, such as `://` or `steelyard`. */
function wordsOf({ source }: RegExp): string[] {
  return [...new Set(source.replace(/\\([^a-zA-Z0-9])/g, '$1').match(/[^[\](){}|?*+^$\\]{2,12}/g) ?? [])].slice(0, 12);
}

/** Long texts of the expression's own alphabet: one character or two over and over, then something that doesn't fit. */
export function* hardTexts(expression: RegExp, length: number): Generator<string> {
  const alphabet = alphabetOf(expression);
  const ends = ['', '!', '\u0001', '\n', alphabet[0] ?? ''];
  const pieces = [
    ...alphabet, ...wordsOf(expression),
    ...alphabet.slice(0, 6).flatMap((a) => alphabet.slice(0, 6).flatMap((b) => (a === b ? [] : [a + b]))),
  ];
  const opens = ['', ...alphabet.slice(0, 4)];
  for (const [i, piece] of pieces.entries()) {
    const long = piece.repeat(Math.ceil(length / piece.length));
    yield `${opens[i % opens.length] ?? ''}${long}${ends[i % ends.length] ?? ''}`;
    yield `${long}${ends[(i + 1) % ends.length] ?? ''}`;
  }
}
