import { problem, type Problem } from '../language/index.js';
import type { kinds, RecordOf } from '../vocabulary/index.js';
import { pictureOutside } from './file-rules.js';
import { remember } from './remember.js';
import { sourceOf, titleOf } from './source.js';
import type { Finding } from './work-types.js';

/** Where the path of a picture leads; undefined outside the workspace. */
export type PictureAt = (fromUri: string, path: string) => string | undefined;

const PICTURE = /\.(?:png|jpe?g|webp)$/i;

export function buildFinding(record: RecordOf<typeof kinds.finding>, pictureAt: PictureAt, problems: Problem[]): Finding | undefined {
  const { values } = record;
  const title = titleOf(record);
  if (title === undefined) return undefined;
  return remember(record, [], problems, (own) => ({
    ...sourceOf(record),
    name: record.name?.name, title, compression: values.compression, leakage: values.leakage, debris: values.debris?.word, seenBy: values.seenBy?.text,
    rulesOut: [...new Set((values.rulesOut ?? []).map(({ name }) => name))],
    pictures: (values.pictures ?? []).map(({ text: path, at }) => {
      const uri = PICTURE.test(path) ? pictureAt(record.block.uri, path) : undefined;
      if (uri === undefined) own.push(problem(pictureOutside, at, { path }));
      return { path, uri, at };
    }),
  }));
}
