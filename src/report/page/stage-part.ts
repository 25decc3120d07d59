import { afterStages, type StageWeighed } from '../../weigh/index.js';
import { destroyedWords, stageFigureNames, stageFigureOf, type StageFigureName } from '../stage-figures.js';
import { figureButton, likelyText, noFigure, title, type PageView } from './cells.js';
import { html, type Html } from './html.js';
import { stageId } from './targets.js';

/** What comes before the decision: each stage by itself, and what it comes to where the customer stops there. */
export function stagePart({ comparison }: PageView): Html | undefined {
  const { stages, money } = comparison;
  if (stages.length === 0) return undefined;
  const row = (name: StageFigureName) => html`<tr data-key="${name}" class="${name === 'stop' ? 'sum' : ''}"><th scope="row">${stageFigureNames[name].trim()}</th>${stages.map((one, i) => html`<td data-key="${one.stage.name}">${one.complete ? figureButton(stageId(i, name), likelyText(stageFigureOf(one, name), money)) : noFigure}</td>`)}</tr>`;
  return html`<section data-key="stages" aria-labelledby="stages-title"><h2 id="stages-title">Before the decision</h2>
<div class="wide" role="region" aria-labelledby="stages-title" tabindex="0"><table class="figures">
<thead><tr data-key="head"><td></td>${stages.map(({ stage }) => html`<th scope="col" data-key="${stage.name}">${title(stage.title)}</th>`)}</tr></thead>
<tbody>${(Object.keys(stageFigureNames) as StageFigureName[]).map(row)}</tbody>
</table></div>
<p>It is in the total of every option, once.${stages.flatMap((one) => destroys(one) ?? [])}</p>${leftToAuthorise(comparison)}</section>`;
}

function destroys(weighed: StageWeighed): Html | undefined {
  const says = destroyedWords(weighed);
  return says === '' ? undefined : html` ${title(says)}`;
}

function leftToAuthorise(comparison: PageView['comparison']): Html | undefined {
  const after = [...afterStages(comparison)].filter(([{ complete }]) => complete);
  const [first] = after;
  if (first === undefined) return undefined;
  const { money } = comparison;
  return html`
<p>${likelyText(first[1].authorised, money)} is authorised already. Left to authorise:</p>
<ul>${after.map(([{ option }, { left }]) => html`<li data-key="${option.name}">${title(option.title)}: ${likelyText(left, money)}</li>`)}</ul>`;
}
