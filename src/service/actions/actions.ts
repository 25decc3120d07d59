import type { Range } from '../../language/index.js';
import type { FeatureContext } from '../context.js';
import type { Action } from '../feature-types.js';
import type { Diagnostic } from '../types.js';
import { allowHere } from './allow-here.js';
import { answerFinding, nameFinding } from './answer-finding.js';
import { outsideTheBook } from '../checks/outside-the-book.js';
import { createUsed } from './create-used.js';
import { followDebris } from './follow-debris.js';
import { writeFromBook } from './from-book.js';
import { addMissing } from './missing-line.js';
import { addNamed } from './named-line.js';
import { writeUnit } from './missing-unit.js';
import { nameOfTitle } from './name-of-title.js';
import { eitherReading } from './thousands.js';

/** Makes the actions for one problem. Keys on its code and data, never on its words. */
export type Mender = (diagnostic: Diagnostic, context: FeatureContext) => readonly (Action | undefined)[];

const menders: readonly Mender[] = [oneStep, eitherReading, writeUnit, nameOfTitle, addMissing, followDebris, answerFinding, nameFinding, addNamed, createUsed, allowHere];

/** Every edit that mends a problem touching the range, the surest first, allowing it last; then what the shop's book of times offers. */
export function actionsAt(uri: string, range: Range, context: FeatureContext, diagnostics: readonly Diagnostic[]): readonly Action[] {
  const here = diagnostics.filter((one) => one.uri === uri && one.range.start <= range.end && one.range.end >= range.start);
  const mended = menders.flatMap((mend) => here.flatMap((one) => mend(one, context).filter((action) => action !== undefined)));
  return here.some(({ code }) => code === outsideTheBook.code) ? mended : [...mended, ...writeFromBook(uri, range, context)];
}

function oneStep({ code, fix }: Diagnostic): readonly Action[] {
  if (fix === undefined) return [];
  return [{ title: fix.title, kind: 'fix', code, edits: new Map([[fix.place.uri, [{ range: fix.place.range, text: fix.text }]]]), creates: undefined }];
}
