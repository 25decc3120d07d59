import type { CautionTopic } from '../estimate/index.js';

/** What every estimate says about itself. It states no legal conclusion; it names what comes first. */
export const estimateNotice: readonly string[] = [
  'This is an estimate, not a repair procedure. The vehicle maker’s service information comes first, and work that needs a licence is for those who hold it.',
  'Check your local rules on written estimates, tax, warranty and waste.',
];

/** The cautions that belong to a topic of work. Types of rule are cited as examples; the local equivalents govern. */
export const cautionTexts: Readonly<Record<CautionTopic, string>> = {
  lifting: 'Lifting: engines and vehicles are lifted and supported only on equipment rated, inspected and locked for it (workplace rules such as 29 CFR 1910; lift standards such as ANSI/ALI; or your local equivalents).',
  fuel: 'Fuel: the system is under pressure and the vapour ignites; it is relieved and kept from sparks and heat as the maker says.',
  battery: 'Battery and restraint systems: disconnected and left to discharge as the maker says before work near them.',
  coolant: 'Coolant: hot and under pressure until it has cooled; caught and disposed of by your local rules.',
  refrigerant: 'Refrigerant: recovered only by certified people with approved equipment where the law says so (such as 40 CFR 82.34, or your local equivalent).',
  oil: 'Used oil: kept apart, stored and handed in by the rules (such as 40 CFR 279.22, or your local equivalent).',
  solvents: 'Solvents and cleaners: used with air and protection as their data sheets say (workplace rules such as 29 CFR 1910, or your local equivalent).',
};

/** The texts for some topics, each once, in a fixed order. */
export function cautionLines(topics: readonly CautionTopic[]): string[] {
  return (Object.keys(cautionTexts) as CautionTopic[]).filter((topic) => topics.includes(topic)).map((topic) => cautionTexts[topic]);
}
