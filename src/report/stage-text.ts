import { afterStages, type Comparison, type Figure, type Money, type StageWeighed, type Weighed } from '../weigh/index.js';
import { moneyText, valueText } from './numbers.js';
import { plain } from './plain.js';
import { destroyedWords, stageFigureNames, stageFigureOf, type StageFigureName } from './stage-figures.js';
import type { Row } from './table.js';

/** What comes before the decision: a column for each stage. */
export function stageRows({ stages, money }: Comparison): Row[] {
  if (stages.length === 0) return [];
  const names = Object.keys(stageFigureNames) as StageFigureName[];
  return [
    { cells: ['', ...stages.map(({ stage, complete }) => `${stage.name}${complete ? '' : ' (incomplete)'}`)] },
    ...names.map((name): Row => ({ cells: [stageFigureNames[name], ...stages.map((one) => figureText(stageFigureOf(one, name)))] })),
  ];

  function figureText(figure: Figure): string {
    return figure.unit === 'money' ? moneyText(figure.likely, money) : valueText(figure.likely, figure.unit, money);
  }
}

/** What a stage comes to, in a sentence or two. */
export function stageSentence(weighed: StageWeighed, money: Money): string {
  const { totals, putBack, stop } = weighed;
  const says = (figure: Figure) => moneyText(figure.likely, money);
  return [`Alone ${says(totals.total)}; where the customer stops there, putting it back adds ${says(putBack)}, ${says(stop)} in all. It is in the total of every option, once.`, destroyedWords(weighed)].filter((one) => one !== '').join(' ');
}

/** A line for each stage that is whole. */
export function stageLines({ stages, money }: Comparison): string[] {
  return stages.filter(({ complete }) => complete).map((one) => `${one.stage.title}. ${stageSentence(one, money)}`);
}

/** What is to be said of each: that every option has it, and what it destroys. */
export function stageSentences({ stages }: Comparison): string[] {
  return stages.map((one) => [`${one.stage.name}: ${plain(one.stage.title)}. In every total, once.`, plain(destroyedWords(one))].filter((says) => says !== '').join(' '));
}

/** Below the totals: what of them is authorised for stages. A cell is empty where the option is authorised itself. */
export function afterStagesRows(comparison: Comparison): Row[] {
  const after = afterStages(comparison);
  if (after.size === 0) return [];
  const cell = (weighed: Weighed, part: 'authorised' | 'left') => {
    const figure = after.get(weighed)?.[part];
    return figure === undefined ? '' : moneyText(figure.likely, comparison.money);
  };
  return [
    { cells: ['  authorised already, for stages', ...comparison.options.map((one) => cell(one, 'authorised'))] },
    { cells: ['  left to authorise', ...comparison.options.map((one) => cell(one, 'left'))] },
  ];
}
