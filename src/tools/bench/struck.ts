/**
 * A text with each of the ten digits at one place, by round. Each text lies in memory in one piece, as an editor hands it
 * over: putting pieces together is not what is measured, of whoever is measured.
 */
export function struckTexts(text: string, at: number): (round: number) => string {
  const texts = Array.from({ length: 10 }, (_, digit) => [text.slice(0, at), String(digit), text.slice(at + 1)].join(''));
  return (round) => texts[round % 10] as string;
}
