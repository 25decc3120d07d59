/** The kinds of line that can count as something. */
export type CountingKind = 'labour' | 'part' | 'sublet' | 'access' | 'fee';

/**
 * One thing of the trade that a line can stand for, so that a check can ask whether the work chosen is complete.
 * `known` says by which words of a title, or of a name, a line is taken for it where the line itself says nothing.
 */
export interface TopicEntry {
  readonly says: string;
  /** Kinds of line that are taken for it; a line of any kind may say it. */
  readonly on: readonly CountingKind[];
  /**
   * Phrases: words in their order, whatever their case and with or without an s. Nothing stands between two of them,
   * no comma either; … stands for anything.
   */
  readonly known: readonly string[];
  /** Phrases that speak against it. */
  readonly not?: readonly string[];
}

const work: readonly CountingKind[] = ['labour', 'sublet'];
const goods: readonly CountingKind[] = ['part'];
const all: readonly CountingKind[] = ['labour', 'part', 'sublet'];

/** Common practice of engine repair; the phrases are those of the trade, and the list is closed. */
const entries = {
  'head-off': { says: 'A cylinder head comes off and goes back on.', on: ['labour'], known: ['head … off', 'head … remove', 'remove … head', 'rebuild … head', 'head … rebuild', 'reface head', 'head gasket … replace', 'replace … head gasket'], not: ['head unit', 'head cover', 'head light', 'shower head', 'head rest'] },
  'head-gasket': { says: 'A new head gasket, or a set with one.', on: goods, known: ['head gasket', 'head set', 'gasket set … head', 'head seal set'] },
  'head-bolts': { says: 'New head bolts or studs.', on: goods, known: ['head bolt', 'head stud'] },
  'flatness-check': { says: 'A gasket face is checked for flatness, or refaced.', on: work, known: ['flatness', 'reface', 'resurface', 'straight edge', 'skim', 'face'], not: ['clean face', 'clean … face'] },
  'crack-check': { says: 'A head or block is tested for cracks, by pressure or by dye.', on: work, known: ['crack', 'pressure test', 'pressure-tested'], not: ['cooling system'] },
  valves: { says: 'Valves are replaced.', on: all, known: ['valve'], not: ['valve cover', 'valve timing', 'valve clearance', 'control valve', 'purge valve', 'relief valve', 'bypass valve', 'expansion valve', 'tyre valve', 'valve seal', 'valve stem', 'valve guide', 'valve seat'] },
  'valve-guides': { says: 'Valve guides are replaced or reamed.', on: all, known: ['valve guide', 'valve … guide'] },
  'valve-seats': { says: 'Valve seats are recut or replaced.', on: all, known: ['valve seat', 'valve … seat', 'seat … recut', 'recut … seat'] },
  'stem-seals': { says: 'New valve stem seals.', on: all, known: ['stem seal', 'valve seal', 'stem oil seal'] },
  'engine-out': { says: 'The engine comes out of the vehicle.', on: ['access', 'labour'], known: ['engine out', 'engine … lowered', 'engine … lifted out', 'engine … removed', 'engine … dropped'], not: ['raised'] },
  'subframe-lowered': { says: 'A subframe that carries the suspension comes down.', on: ['access', 'labour'], known: ['subframe … lowered', 'lowered … subframe', 'subframe … off', 'subframe … dropped'] },
  'engine-swap': { says: 'Another engine goes in.', on: ['labour'], known: ['swap … engine', 'engine swap', 'fit … used engine', 'fit … exchange engine', 'fit … engine', 'change over engine'], not: ['engine mount', 'engine cover', 'engine harness', 'before fitting'] },
  'used-engine': { says: 'A used engine.', on: goods, known: ['used engine', 'second-hand engine', 'engine with … mi', 'engine with … km'], not: ['engine mount', 'engine oil', 'engine cover', 'engine harness', 'engine control', 'engine bracket'] },
  'exchange-engine': { says: 'A rebuilt or exchange engine, whole or as a long block.', on: goods, known: ['exchange engine', 'rebuilt engine', 'reconditioned engine', 'engine … rebuilt', 'long block', 'short block'], not: ['engine mount', 'engine oil', 'engine cover', 'engine harness', 'engine control', 'engine bracket'] },
  'acceptance-check': { says: 'A used engine is looked over before it is fitted: compression or leakage, borescope, build date.', on: work, known: ['used engine … compression', 'used engine … leakage', 'used engine … borescope', 'engine … before fitting', 'accept … engine', 'accept … used engine'] },
  'wear-parts': { says: 'Seals, gaskets and other cheap wear parts renewed while an engine is on the stand.', on: goods, known: ['gasket and seal', 'seal and gasket', 'wear part', 'seal kit', 'crankshaft seal', 'rear main seal', 'spark plug', 'thermostat', 'drive belt'] },
  coolant: { says: 'New coolant.', on: goods, known: ['coolant', 'antifreeze'], not: ['coolant pump', 'coolant hose', 'coolant pipe', 'coolant tank', 'coolant sensor', 'coolant cap', 'coolant … housing', 'coolant flange'] },
  'engine-oil': { says: 'New engine oil.', on: goods, known: ['engine oil', 'motor oil'], not: ['oil filter', 'oil cooler', 'oil pan', 'oil pump', 'oil pickup', 'oil seal'] },
  'oil-filter': { says: 'A new oil filter.', on: goods, known: ['oil filter'], not: ['oil filter housing', 'oil filter cover', 'oil filter cap'] },
  'wheel-alignment': { says: 'The wheels are aligned.', on: work, known: ['wheel alignment', 'wheel … aligned', 'align … wheel'] },
  refrigerant: { says: 'Refrigerant is recovered and filled again, by certified people where the law says so.', on: ['labour', 'sublet', 'fee', 'part'], known: ['refrigerant', 'air conditioning … refill', 'air conditioning … recharge'] },
  'oil-pan': { says: 'The oil pan comes off and is cleaned, or is replaced.', on: all, known: ['oil pan', 'sump'] },
  'oil-pickup': { says: 'The oil pickup is cleaned or replaced.', on: all, known: ['oil pickup', 'pickup', 'pick-up'] },
  'oil-cooler': { says: 'The oil cooler is flushed or replaced.', on: all, known: ['oil cooler', 'oil … cooler'] },
  'bearings-check': { says: 'Crankshaft bearings are looked at, measured or replaced.', on: all, known: ['main bearing', 'rod bearing', 'big end', 'crankshaft bearing', 'bearing … check', 'bearing … look', 'bearing … measure', 'check … bearing', 'measure … bearing', 'bearing shell', 'bearing clearance'], not: ['wheel bearing'] },
  'timing-chain': { says: 'The timing chain comes off or is replaced.', on: ['labour', 'part'], known: ['timing chain', 'cam chain'] },
  'timing-belt': { says: 'The timing belt comes off or is replaced.', on: ['labour', 'part'], known: ['timing belt', 'cam belt'] },
  tensioner: { says: 'A tensioner or idler is replaced.', on: all, known: ['tensioner', 'idler'] },
  'coolant-pump': { says: 'The coolant pump is replaced or looked at.', on: all, known: ['coolant pump', 'water pump', 'timing belt … pump', 'timing chain … pump'] },
} as const satisfies Readonly<Record<string, TopicEntry>>;

export type Topic = keyof typeof entries;

export const topics: Readonly<Record<Topic, TopicEntry>> = entries;

/** Stands alone behind `counts as` and switches recognition off. */
export const NOTHING = 'nothing';

/** The words that may stand behind `counts as`, with what they mean. */
export const topicWords: Readonly<Record<Topic | typeof NOTHING, string>> = {
  ...(Object.fromEntries(Object.entries(topics).map(([word, { says }]) => [word, says])) as Record<Topic, string>),
  [NOTHING]: 'It stands for none of these, whatever its title says.',
};

export const countsAsSays = 'What it counts as when the work is checked for what goes with it. Where nothing is said, its title and its name decide; nothing switches that off.';
