import type { Dice } from './dice.js';

/** A text with something in it that there is very much of: long lines, names and lists, deep lines, many of one kind. */
export function grown(text: string, dice: Dice): string {
  const many = 2 + dice.upTo(dice.chance(10) ? 600 : 40);
  const each = (make: (i: number) => string) => Array.from({ length: many }, (_, i) => make(i));
  const lists: readonly (() => string)[] = [
    () => `note "${'x'.repeat(many * 50)}"\n`,
    () => `part ${'n'.repeat(many * 40)} "Long name" 1.00 new\n`,
    () => each((i) => `${' '.repeat(i)}x`).join('\n') + '\n',
    () => each((i) => `${'  '.repeat(i % 14)}option o${i} "O"`).join('\n') + '\n',
    () => `option list "List"\n  do ${each((i) => `j${i}`).join(', ')}\n${each((i) => `labour j${i} "J" ${i % 9}.5 h`).join('\n')}\n`,
    () => `finding f "F"\n  compression ${each(() => '120').join(' ')} psi\n`,
    () => `${each((i) => `use "f${i}.yard"`).join('\n')}\n`,
    () => `${each((i) => `access a${i} "A"\n  remove 1 h${i === 0 ? '' : `\n  includes a${i - 1}`}`).join('\n')}\nlabour deep "Deep" 1 h with a${many - 1}\noption deep "Deep"\n  do deep\n`,
    () => `option risky "Risky"\n  part "P" 10.00 new\n${each((i) => `  chance c${i} "C" ${(i * 7) % 101}%\n    part "Q" ${i}.00 new`).join('\n')}\n`,
    () => `${each((i) => `labour l${i} "L" 1 h${i === 0 ? '' : `\n  after l${i - 1}`}`).join('\n')}\noption chain "Chain"\n  do ${each((i) => `l${i}`).join(', ')}\n`,
    () => each((i) => `option p${i} "P"\n  part "P" ${i}.00 new\n`).join(''),
    () => `shop "S"\n${each((i) => `  markup ${i}% to ${i + 1}.00`).join('\n')}\n${each((i) => `  tax t${i} "T" ${i}% on parts, labour, fees`).join('\n')}\n`,
  ];
  const added = dice.pick(lists)();
  return dice.chance(50) ? `${text}\n${added}` : `steelyard 1\n${added}${text.replace(/^steelyard 1\n/, '')}`;
}
