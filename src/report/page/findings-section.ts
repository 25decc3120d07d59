import type { Finding, Picture } from '../../estimate/index.js';
import type { Readings } from '../../vocabulary/index.js';
import { title, type PageView } from './cells.js';
import { html, type Html } from './html.js';
import { findingId } from './targets.js';

/** Pictures of one estimate that are shown; more of them would bury the figures. */
export const MOST_SHOWN = 24;

/** What was found, with its readings and pictures, each leading to its line; nothing where nothing was written down. */
export function findingsSection({ comparison: { estimate }, pictureOf }: PageView): Html | undefined {
  const { findings } = estimate;
  if (findings.length === 0) return undefined;
  let shown = 0;
  const pictures = (finding: Finding) => finding.pictures.map((picture, i) => pictureFigure(finding, picture, i, ++shown > MOST_SHOWN ? undefined : (uri) => pictureOf?.(uri)));
  return html`<section data-key="findings" aria-labelledby="findings-title"><h2 id="findings-title">What was found</h2>
<ul class="findings">${findings.map((finding, i) => html`<li data-key="${findingId(i)}" data-row="${findingId(i)}"><button type="button" data-figure="${findingId(i)}">${title(finding.title)}</button>${readings(finding)}${finding.pictures.length === 0 ? undefined : html`<div class="pictures" data-key="pictures">${pictures(finding)}</div>`}</li>`)}</ul></section>`;
}

/** What was measured and who saw it, as it is written. */
function readings({ compression, leakage, debris, seenBy }: Finding): Html | undefined {
  const measured = (what: string, { values, unit }: Readings) => `${what} ${values.map((one) => one.toFixed()).join(' ')} ${unit?.word ?? ''}`.trimEnd();
  const says = [
    ...(compression === undefined ? [] : [measured('compression', compression)]),
    ...(leakage === undefined ? [] : [`${measured('leakage', leakage)} %`]),
    ...(debris === undefined ? [] : [debris === 'none' ? 'no debris' : `${debris} debris`]),
    ...(seenBy === undefined ? [] : [`seen by ${seenBy}`]),
  ];
  return says.length === 0 ? undefined : html` <span class="said">${says.join('; ')}</span>`;
}

function pictureFigure(finding: Finding, { path, uri }: Picture, index: number, pictureOf: ((uri: string) => string | undefined) | undefined): Html {
  const name = path.slice(path.lastIndexOf('/') + 1);
  const source = uri === undefined ? undefined : pictureOf?.(uri);
  const inside = source === undefined
    ? html`<span class="absent">${pictureOf === undefined ? `More than ${MOST_SHOWN} pictures: not shown` : 'Not shown: no picture in this workspace'}</span>`
    : html`<img src="${source}" alt="${finding.title}" loading="lazy" decoding="async">`;
  return html`<figure data-key="${index}">${inside}<figcaption><bdi>${name}</bdi></figcaption></figure>`;
}
