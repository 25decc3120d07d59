/**
 * What the product says of some files: texts in, the data of `steelyard weigh --json` out. It goes through the facade and
 * the report alone, so nothing that it works with inside is seen from here.
 */
import { closingJson, jsonText, weighJson } from '../../src/report/index.js';
import { createLanguageService, resolveWithin } from '../../src/service/index.js';
import { closingOf } from '../../src/weigh/index.js';

/** Low, likely and high as they are told, in decimal digits. */
export interface ToldFigure {
  readonly low: string;
  readonly likely: string;
  readonly high: string;
  readonly unit: string;
}

export type Told = ReturnType<typeof weighJson>;
export type ToldOption = Told['options'][number];

/** Files by their names below one folder; the first is the estimate. */
export type Texts = ReadonlyMap<string, string>;

export function texts(text: string): Texts {
  return new Map([['one.yard', text]]);
}

function serviceOf(files: Texts) {
  const root = '/w/';
  return createLanguageService({
    read: (uri) => {
      const text = files.get(uri.slice(root.length));
      return text === undefined ? 'missing' : { text };
    },
    resolvePath: (from, to) => resolveWithin('/w', from, to),
  });
}

/** Throws where the estimate has errors: what is told is then not to be compared. */
export function told(files: Texts, today?: string): Told {
  const service = serviceOf(files);
  const [main = ''] = files.keys();
  const uri = `/w/${main}`;
  const errors = [...service.allDiagnostics(uri).values()].flat().filter(({ severity }) => severity === 'error');
  if (errors.length > 0) throw new Error(`${errors.map(({ text }) => text).join('\n')}\n${[...files.values()].join('\n')}`);
  return JSON.parse(jsonText(weighJson(service.decision(uri), () => undefined, today))) as Told;
}

/** What `steelyard closing --json` says; undefined where nothing is closed. */
export function toldClosing(files: Texts): ReturnType<typeof closingJson> | undefined {
  const [main = ''] = files.keys();
  const { comparison } = serviceOf(files).weighing(`/w/${main}`);
  const closing = closingOf(comparison);
  return closing === undefined ? undefined : (JSON.parse(jsonText(closingJson(closing, comparison, () => undefined))) as ReturnType<typeof closingJson>);
}
