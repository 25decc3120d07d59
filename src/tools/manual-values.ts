import { allKinds, units, type Dimension, type Field } from '../vocabulary/index.js';
import { code, plain, sentenceCase, table } from './markdown.js';
import { formOf } from './value-form.js';

const measured: Readonly<Record<Dimension, string>> = {
  plain: 'a plain number', money: 'money', percent: 'a percentage', time: 'working time', wait: 'waiting time and terms',
  volume: 'volume', mass: 'weight', length: 'length', distance: 'distance', pressure: 'pressure',
};

/** The chapter on what can stand in a line: figures, units, names, words, dates. */
export function valuesChapter(): string {
  return [
    '## Values and units',
    'A number is written in digits with a point before the decimals: `64.30`. There is no thousands sign and no minus sign. A space stands between a number and its unit. The percent sign may stand right behind the number.',
    'Wherever a figure stands you may write three of them: `4.5 / 5.5 / 8 h` means at least 4.5, most likely 5.5, at most 8 hours. The likely one is quoted; the other two say how sure it is. The unit is written once, at the end.',
    'Money is a plain number in the shop’s currency; the three letters of a currency may stand behind it: `64.30 USD`. Prices, rates and fees are without tax: the `tax` lines of the shop add it. Only what was `quoted`, `authorised` and `billed` has the tax in it.',
    'One to three digits, a point and three more, as in `1.250`, could be thousands or decimals. For money and distances that is refused, since the two differ by a factor of a thousand; write `1250` or `1.25`, and where thousandths are meant a fourth decimal: `1.1250`. Only in a currency whose smallest coin is a thousandth is money written so.',
    table(['Value', 'For example', 'What it is'], valueRows()),
    'The units:',
    table(['Unit', 'Means', 'Measures'], units.map((unit) => [code(unit.word), plain(unit.says), measured[unit.dimension]])),
  ].join('\n\n');
}

/** Every value that some line takes, once; closed lists of words are explained where they stand. */
function valueRows(): string[][] {
  const rows = new Map<string, string[]>();
  for (const kind of allKinds) {
    for (const field of Object.values(kind.fields) as Field[]) {
      const { label, examples, says } = field.value;
      const form = formOf(field.value);
      if (form.choices.length > 0 || form.refersTo.length > 0 || form.list) continue;
      if (!rows.has(label)) rows.set(label, [plain(label), examples.map(code).join(', '), plain(sentenceCase(says))]);
    }
  }
  return [
    ...rows.values(),
    ['a name', [code('pump'), code('rear-head')].join(', '), 'The name of another line, of this file or of a shared one: letters, digits and hyphens, a letter first.'],
    ['several', code('pump, rear-head'), 'Where a line takes several names, words or dates, commas stand between them.'],
  ];
}
