import { changesHtml, changesJson, changesPart, changesReport, changesTargets, changesText } from '../../report/changes/index.js';
import { changesSarif } from '../../report/sarif/index.js';
import { rangeAt } from '../../cli/positions.js';
import { changesBetween } from '../../service/changes.js';
import { zero } from '../../vocabulary/index.js';
import { clean, finite, holds } from './claim.js';
import type { Input } from './input.js';
import { wellFormed } from './markup.js';
import { deskOver, uriOf, type Desk } from './over.js';
import { placesIn } from './places.js';

const schema = changesReport();

/** What changed between the text before its last edit and the text now; and nothing changes between a text and itself. */
export function passChanges({ files, name, before }: Input, { service }: Desk): void {
  const uri = uriOf(name);
  const old = deskOver(new Map([...files, [name, before]])).service;
  const words = [...files.values(), before].join('\n');
  const changes = changesBetween({ service: old, uri, name: 'before' }, { service, uri, name: 'after' });
  const text = changesText(changes);
  clean('what changed is words', text, words);
  for (const page of [changesHtml(changes), changesPart(changes)]) {
    wellFormed('what changed is well formed', page);
    clean('what changed is words on a page', page, words);
  }
  const report = changesJson(changes, { before: placesIn(old), after: placesIn(service) });
  finite('what changed holds numbers', report);
  const { error } = schema.safeParse(JSON.parse(JSON.stringify(report)));
  holds('what changed fits its schema', error === undefined, () => String(error));
  changesTargets(changes);
  const fileOf = (file: string) => ({ identity: file, path: file.slice(1), from: 'source-root' as const });
  finite('the log of what changed holds numbers', changesSarif(changes, {
    version: '0', exitCode: 0, file: fileOf(uri), names: { before: 'before', after: 'after' },
    placeOf: (span) => {
      const place = service.place(span);
      const tree = place === undefined ? undefined : service.tree(place.uri);
      return place === undefined || tree === undefined ? undefined : { file: fileOf(place.uri), ...rangeAt(tree.text, place.range) };
    },
  }));
  if (!changes.comparable) return;
  changes.options.forEach(({ before: was, after: is }, i) => {
    if (was === undefined || is === undefined || !was.complete || !is.complete) return;
    const moved = [...changes.changes, ...changes.follows].reduce((sum, { effects }) => sum.plus(effects[i]?.total ?? zero), zero);
    holds('what changed adds up to the difference of the totals', moved.eq(is.total.minus(was.total)), () => `option ${i}: ${moved.toFixed()} instead of ${is.total.minus(was.total).toFixed()}`);
  });
}
