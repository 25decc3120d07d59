import type { Finding, Picture } from '../../estimate/index.js';
import type { Readings } from '../../vocabulary/index.js';
import { title, type PageView, type PictureSource } from './cells.js';
import { html, type Html } from './html.js';
import { findingId } from './targets.js';

/** Pictures of one estimate that are shown; more of them would bury the figures. */
const MOST_SHOWN = 24;

/** What was found, with its readings and pictures, each leading to its line; nothing where nothing was written down. */
export function findingsSection({ comparison: { estimate }, pictureOf }: PageView): Html | undefined {
  const { findings } = estimate;
  if (findings.length === 0) return undefined;
  let shown = 0;
  const sourceOf = ({ uri }: Picture): PictureSource | 'too-many' => (++shown > MOST_SHOWN ? 'too-many' : uri === undefined || pictureOf === undefined ? { kind: 'absent' } : pictureOf(uri));
  const pictures = (finding: Finding) => finding.pictures.map((picture, i) => pictureFigure(finding, picture, i, sourceOf(picture)));
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

function pictureFigure({ title: alt }: Finding, { path }: Picture, index: number, source: PictureSource | 'too-many'): Html {
  const name = path.slice(path.lastIndexOf('/') + 1);
  return html`<figure data-key="${index}">${inside(source, alt)}<figcaption><bdi>${name}</bdi></figcaption></figure>`;
}

function inside(source: PictureSource | 'too-many', alt: string): Html {
  if (source === 'too-many') return html`<span class="absent">More than ${MOST_SHOWN} pictures: not shown</span>`;
  switch (source.kind) {
    case 'shown': return html`<img src="${source.address}" alt="${alt}" loading="lazy" decoding="async">`;
    case 'awaited': return html``;
    case 'absent': return html`<span class="absent">Not shown: no picture in this workspace</span>`;
  }
}
