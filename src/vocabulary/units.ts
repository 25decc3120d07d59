/** What a figure measures. A slot says which it takes. */
export type Dimension = 'plain' | 'money' | 'percent' | 'time' | 'wait' | 'volume' | 'mass' | 'length' | 'distance' | 'pressure';

export interface Unit {
  readonly word: string;
  readonly dimension: Dimension;
  readonly says: string;
}

/**
 * The units that an estimate may use. `wait` units count from a date: `d` is a working day where the shop waits
 * for something and a calendar day where a supplier's or the law's clock runs; the slot says which.
 */
export const units: readonly Unit[] = [
  { word: 'h', dimension: 'time', says: 'hours of work' },
  { word: 'min', dimension: 'time', says: 'minutes of work' },
  { word: 'd', dimension: 'wait', says: 'days' },
  { word: 'wk', dimension: 'wait', says: 'weeks of seven calendar days' },
  { word: 'mo', dimension: 'wait', says: 'calendar months' },
  { word: 'L', dimension: 'volume', says: 'litres' },
  { word: 'qt', dimension: 'volume', says: 'US liquid quarts' },
  { word: 'gal', dimension: 'volume', says: 'US gallons' },
  { word: 'kg', dimension: 'mass', says: 'kilograms' },
  { word: 'lb', dimension: 'mass', says: 'pounds' },
  { word: 'm', dimension: 'length', says: 'metres' },
  { word: 'ft', dimension: 'length', says: 'feet' },
  { word: 'mi', dimension: 'distance', says: 'miles' },
  { word: 'km', dimension: 'distance', says: 'kilometres' },
  { word: 'psi', dimension: 'pressure', says: 'pounds per square inch' },
  { word: 'bar', dimension: 'pressure', says: '100 kilopascals' },
  { word: 'kPa', dimension: 'pressure', says: 'kilopascals' },
];

const byWord = new Map(units.map((unit) => [unit.word, unit]));

/** How people also write a unit; always reported, with the unit to write instead. */
const otherSpellings: Readonly<Record<string, string>> = {
  hr: 'h', hrs: 'h', hour: 'h', hours: 'h', H: 'h', mins: 'min', minute: 'min', minutes: 'min',
  day: 'd', days: 'd', D: 'd', week: 'wk', weeks: 'wk', w: 'wk', wks: 'wk', month: 'mo', months: 'mo', mth: 'mo', mths: 'mo',
  std: 'h', Std: 'h', Stunde: 'h', Stunden: 'h', heure: 'h', heures: 'h', Tag: 'd', Tage: 'd', jour: 'd', jours: 'd', Woche: 'wk', Wochen: 'wk', Monat: 'mo', Monate: 'mo',
  l: 'L', ltr: 'L', litre: 'L', litres: 'L', liter: 'L', liters: 'L', quart: 'qt', quarts: 'qt', gallon: 'gal', gallons: 'gal',
  kilo: 'kg', kilos: 'kg', lbs: 'lb', mile: 'mi', miles: 'mi', Mi: 'mi', KM: 'km', kms: 'km', Km: 'km', PSI: 'psi', kpa: 'kPa', KPA: 'kPa',
};

export function unitOf(word: string): Unit | undefined {
  return byWord.get(word);
}

export function unitMeantBy(word: string): Unit | undefined {
  const known = otherSpellings[word];
  return known === undefined ? undefined : byWord.get(known);
}

/** A year is no unit: an estimate counts in months. */
export function isYears(word: string): boolean {
  return /^(?:y|yr|yrs|year|years)$/i.test(word);
}

export function unitsOf(dimension: Dimension): readonly Unit[] {
  return units.filter((unit) => unit.dimension === dimension);
}
