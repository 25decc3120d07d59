import type { Token, Tree } from '../../language/index.js';
import { Decimal, units, valueRules, type Kind } from '../../vocabulary/index.js';
import { kindAbove, kindOf, locate } from '../at.js';
import { exampleText } from '../complete/example.js';
import { fieldOfKey, leadAt, walkFact, walkHead } from '../complete/walk.js';
import type { FeatureContext } from '../context.js';
import type { Action } from '../feature-types.js';
import type { Diagnostic } from '../types.js';

/** A figure without its unit: one step for each unit that its slot takes, the one of the vocabulary's example first. */
export function writeUnit({ code, uri, range }: Diagnostic, context: FeatureContext): readonly Action[] {
  const tree = code === valueRules.unitMissing.code ? context.tree(uri) : undefined;
  if (tree === undefined) return [];
  const written = tree.text.slice(range.start, range.end);
  return unitsBehind(tree, range.end).flatMap((unit) => figuresWith(written, unit)).map((text) => ({ title: `Write ${text}`, kind: 'fix', code, edits: new Map([[uri, [{ range, text }]]]), creates: undefined }));
}

/** The units that a figure may have that ends at an offset. */
function unitsBehind(tree: Tree, offset: number): string[] {
  const at = locate(tree, offset);
  if (at?.statement === undefined) return [];
  const before = at.statement.tokens.filter(({ end }) => end <= offset - at.start);
  const own = kindOf(at.statement, at.above);
  const kind = own ?? kindAbove(at.above);
  return kind === undefined ? [] : [...new Set(slotsOf(kind, before, own !== undefined).flatMap((key) => unitsOf(kind, key)))];
}

/** The slots that a figure at the end of these words may be for: on a head line, or on a line of its own below it. */
function slotsOf(kind: Kind, before: readonly Token[], onHead: boolean): readonly string[] {
  if (onHead) return walkHead(kind, before).waits.unitOf;
  const lead = leadAt(kind, before, 0);
  return lead === undefined ? [] : walkFact(lead.key, fieldOfKey(kind, lead.key), before, lead.words).waits.unitOf;
}

function unitsOf(kind: Kind, key: string): string[] {
  const { measures = [] } = fieldOfKey(kind, key).value;
  const words = [...units.filter(({ dimension }) => measures.includes(dimension)).map(({ word }) => word), ...(measures.includes('percent') ? ['%'] : [])];
  const example = exampleText(kind, key) ?? '';
  const isUsual = (word: string) => example.endsWith(word === '%' ? word : ` ${word}`);
  return words.sort((a, b) => Number(isUsual(b)) - Number(isUsual(a)));
}

/** 0.08 is as likely meant as the share that 8% is; both are offered. */
function figuresWith(written: string, unit: string): string[] {
  if (unit !== '%') return [`${written} ${unit}`];
  const share = /^0?\.\d*[1-9]$/.test(written) ? [`${new Decimal(written).times(100).toFixed()}%`] : [];
  return [...share, /^[\d.]+$/.test(written) ? `${written}%` : `${written} %`];
}
