import type { Span } from '../../language/index.js';
import { html, type Html } from './html.js';

/** The likely value of a figure as it is written, and what stands behind it: its unit or its currency. */
export function writtenFigure({ block, start, end }: Span): { readonly value: string; readonly unit: string } | undefined {
  const found = /^(\d[\d.]*)(?:\s*\/\s*(\d[\d.]*)\s*\/\s*\d[\d.]*)?\s*(\S*)$/.exec(block.text.slice(start, end));
  const [, only = '', likely = only, unit = ''] = found ?? [];
  return found === null ? undefined : { value: likely, unit };
}

/** A field in which another value of a figure is tried. */
export interface TrialField {
  readonly id: string;
  /** What the figure is, for those who can't see what stands beside the field. */
  readonly names: string;
  /** As it stands in the file, and as it is tried. */
  readonly today: string;
  readonly value: string;
  readonly unit: string;
}

export function trialField({ id, names, today, value, unit }: TrialField): Html {
  return html`<span class="try"><label><span class="handle" aria-hidden="true">try</span><span class="unseen">Try another value for ${names}, in the file ${today} ${unit}</span> <input type="text" inputmode="decimal" autocomplete="off" spellcheck="false" size="9" maxlength="19" data-try="${id}" data-today="${today}" value="${value}"></label>${unit === '' ? undefined : html` <span aria-hidden="true">${unit}</span>`}</span>`;
}
