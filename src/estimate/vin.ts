/** Values of letters for the check digit: 49 CFR 565.15, table III. I, O and Q never occur. */
const letterValues: Readonly<{ [letter: string]: number }> = {
  A: 1, B: 2, C: 3, D: 4, E: 5, F: 6, G: 7, H: 8, J: 1, K: 2, L: 3, M: 4, N: 5, P: 7, R: 9,
  S: 2, T: 3, U: 4, V: 5, W: 6, X: 7, Y: 8, Z: 9,
};

/** Weights by position: 49 CFR 565.15, table IV. */
const weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2] as const;

export interface VinReading {
  readonly shape: 'good' | 'wrong length' | 'wrong character';
  /** Weighted sum, where the shape is good. */
  readonly sum: number | undefined;
  /** The check digit that position 9 should show. */
  readonly checkDigit: string | undefined;
  readonly checkDigitHolds: boolean;
  /** ISO 3780 gives 1 to 5 to North America, where the check digit is required. */
  readonly northAmerican: boolean;
}

/** Reads a vehicle identification number. ISO 3779 gives the shape; the check digit is North American law only. */
export function readVin(vin: string): VinReading {
  const northAmerican = /^[1-5]/.test(vin);
  const none = { sum: undefined, checkDigit: undefined, checkDigitHolds: false, northAmerican };
  if (vin.length !== 17) return { shape: 'wrong length', ...none };
  let sum = 0;
  for (let i = 0; i < 17; i++) {
    const character = vin[i] as string;
    const value = /\d/.test(character) ? Number(character) : letterValues[character];
    if (value === undefined) return { shape: 'wrong character', ...none };
    sum += value * (weights[i] as number);
  }
  const checkDigit = sum % 11 === 10 ? 'X' : String(sum % 11);
  return { shape: 'good', sum, checkDigit, checkDigitHolds: vin[8] === checkDigit, northAmerican };
}
