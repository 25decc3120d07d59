import { problem, type Block, type Problem, type Span } from '../language/index.js';
import { is, kinds, valueRules, type Kind, type Name, type Record, type RecordOf } from '../vocabulary/index.js';
import { buildAuthorised, buildQuoted, buildStarted, type JobNames } from './build-authorised.js';
import { buildOption } from './build-option.js';
import { buildStage, checkStages } from './build-stage.js';
import { asItStands } from './as-it-stands.js';
import { buildChance, chancesByRecord } from './build-chance.js';
import { buildClosed } from './build-closed.js';
import { buildCoverage, buildInspection } from './build-decision.js';
import { buildShop, buildTool, noShop } from './build-shop.js';
import { buildAccess, buildFee, buildFinding, buildLabour, buildPart, buildSublet, pick, type Lookup } from './build-work.js';
import { checkCurrencies } from './check-currency.js';
import { checkFindings, checkVin } from './check-vehicle.js';
import { gather, type Sources } from './files.js';
import { withoutEchoes } from './echoes.js';
import * as decisionRules from './decision-rules.js';
import * as rules from './name-rules.js';
import { remember } from './remember.js';
import { Scope, type NamedKind } from './scope.js';
import { sourceOf } from './source.js';
import * as workRules from './work-rules.js';
import type { Access, Estimate, Header, Labour, Option, Vehicle } from './types.js';

/** An estimate and what is wrong with it, in whichever of its files that is. */
export interface Resolved {
  readonly estimate: Estimate;
  readonly records: readonly Record[];
  readonly scope: Scope;
  readonly problems: readonly Problem[];
  /** The other files it was made from, missing ones too. */
  readonly uses: readonly string[];
  /** Files that have not been read yet; resolve again when they are. */
  readonly waitsFor: readonly string[];
  /** Blocks without a fault of their own that rest on something that could not be read. */
  readonly spoiled: ReadonlySet<Block>;
}

/** Reads a file with its shared files and resolves every name. Never throws. */
export function resolve(uri: string, sources: Sources): Resolved {
  const gathered = gather(uri, sources);
  const problems: Problem[] = [...gathered.problems];
  const { records, lost } = gathered;
  const scope = new Scope(records, problems);
  for (const record of records) scope.checkNames(record);

  const shopRecord = onlyOne(records, kinds.shop, problems);
  const shop = shopRecord === undefined ? noShop : buildShop(shopRecord, problems);
  const lookup = lookupOver(scope, shop, sources, problems);

  const header = onlyOne(records, kinds.estimate, problems);
  const vehicle = onlyOne(records, kinds.vehicle, problems);
  const vehicleBuilt = vehicle === undefined ? undefined : buildVehicle(vehicle);
  const access = named(records, kinds.access, lookup.access);
  const stages = records.flatMap((record) => (is(record, kinds.stage) && record.name !== undefined && scope.find('stage', record.name.name) === record ? (buildStage(record, lookup) ?? []) : []));
  const options = optionRecords(records, problems).flatMap((record) => buildOption(record, stages, lookup) ?? []);
  checkStages(stages, options, problems);
  const chanceNamed = (name: string) => {
    const record = scope.find('chance', name);
    return record === undefined || !is(record, kinds.chance) ? undefined : buildChance(record, lookup);
  };
  const chances = chancesByRecord(records, lookup);
  const job = jobNames(records, options, header);
  const startedRecord = onlyOne(records, kinds.started, problems);
  const estimate: Estimate = {
    uri,
    shop,
    header: header === undefined ? undefined : buildHeader(header, problems),
    vehicle: vehicleBuilt,
    findings: records.flatMap((record) => (is(record, kinds.finding) ? (record.name === undefined ? (buildFinding(record, sources.resolvePath, problems) ?? []) : (lookup.finding(record.name.name) ?? [])) : [])),
    access,
    chances,
    labour: named(records, kinds.labour, lookup.labour),
    parts: named(records, kinds.part, lookup.part),
    sublets: named(records, kinds.sublet, lookup.sublet),
    fees: named(records, kinds.fee, lookup.fee),
    tools: named(records, kinds.tool, lookup.tool),
    stages,
    options: [...options, ...asItStands(vehicleBuilt, options, stages, problems)],
    consider: records.flatMap((record) => (is(record, kinds.consider) ? pick(record.values.labour, lookup.labour) : [])),
    inspections: records.flatMap((record) => (is(record, kinds.inspect) ? (buildInspection(record, lookup, chanceNamed) ?? []) : [])),
    coverages: records.flatMap((record) => (is(record, kinds.coverage) ? (buildCoverage(record, problems) ?? []) : [])),
    quoted: records.flatMap((record) => (is(record, kinds.quoted) ? [buildQuoted(record, job, problems)] : [])),
    authorised: buildAuthorised(records.filter((record) => is(record, kinds.authorised)), job, problems),
    started: startedRecord === undefined ? undefined : buildStarted(startedRecord, job, problems),
    closed: closedIn(records, { options, access, chances }, lookup),
    notes: records.flatMap((record) => (is(record, kinds.note) && record.title !== undefined ? [record.title.text] : [])),
  };
  for (const record of records) {
    if (!is(record, kinds.consider) || record.broken || record.values.labour !== undefined) continue;
    problems.push(problem(valueRules.expected, record.at, { wanted: 'the name of a labour line', example: 'consider tensioner, plugs-job', found: undefined }));
  }
  checkCurrencies(records, shop.currency.code, problems);
  checkVin(records, problems);
  checkFindings(estimate, problems);
  const told = withoutEchoes(problems, estimate, lost);
  return { estimate, records, scope, problems: told.problems, spoiled: new Set([...told.spoiled, ...scope.spoiled, ...withoutTheirStage(records, estimate)]), uses: gathered.uses, waitsFor: gathered.waitsFor };
}

/** What the job really took, held against what the rest of the file says. */
function closedIn(records: readonly Record[], { options, access, chances }: Pick<Estimate, 'options' | 'access' | 'chances'>, lookup: Lookup): Estimate['closed'] {
  const record = onlyOne(records, kinds.closed, lookup.problems);
  if (record === undefined) return undefined;
  const written = records.find((one) => is(one, kinds.estimate))?.values.written?.iso;
  const started = records.find((one) => is(one, kinds.started))?.values.on?.iso;
  return buildClosed(record, { options, access, chances, written, started }, lookup);
}

/** A stage is in every option: where one could not be made out, none of them is whole. */
function withoutTheirStage(records: readonly Record[], { stages, options }: Estimate): Block[] {
  const lost = records.some((record) => is(record, kinds.stage) && !stages.some((stage) => stage.record === record));
  return lost ? options.map(({ record }) => record.block) : [];
}

/** More options than this can't be read side by side, and a file with thousands of them is no estimate. */
const MOST_OPTIONS = 40;

function optionRecords(records: readonly Record[], problems: Problem[]): RecordOf<typeof kinds.option>[] {
  const options = records.filter((record) => is(record, kinds.option));
  const over = options[MOST_OPTIONS];
  if (over !== undefined) problems.push(problem(workRules.tooManyOptions, over.at, { most: MOST_OPTIONS }));
  return options.slice(0, MOST_OPTIONS);
}

/** The options and stages that records of the job may be for. */
function jobNames(records: readonly Record[], options: readonly Option[], header: RecordOf<typeof kinds.estimate> | undefined): JobNames {
  const stages = records.flatMap(({ kind, name }) => (kind.word === 'stage' && name !== undefined ? [name.name] : []));
  return { options: options.map(({ name }) => name), stages, written: header?.values.written?.iso };
}

function named<T>(records: readonly Record[], kind: Kind, find: (name: string) => T | undefined): T[] {
  const found = new Set<T>();
  for (const record of records) {
    const one = record.kind.word === kind.word && record.name !== undefined ? find(record.name.name) : undefined;
    if (one !== undefined) found.add(one);
  }
  return [...found];
}

/** Builds each named thing once, and cuts circles where they close. */
function lookupOver(scope: Scope, tables: Tables, shop: Lookup['shop'], sources: Pick<Sources, 'resolvePath'>, problems: Problem[]): Lookup {
  const part = ofKind(kinds.part, [shop], (record) => buildPart(record, lookup));
  const sublet = ofKind(kinds.sublet, [shop], (record) => buildSublet(record, lookup));
  const finding = ofKind(kinds.finding, [], (record) => buildFinding(record, sources.resolvePath, problems));
  const fee = ofKind(kinds.fee, [shop], (record) => shop.fees.find((one) => one.record === record) ?? buildFee(record, problems));
  const tool = ofKind(kinds.tool, [shop], (record) => shop.tools.find((one) => one.record === record) ?? buildTool(record, false));
  const goods = [part.standIn, sublet.standIn, tool.standIn];
  const access = ofKind(kinds.access, [shop, ...goods], (record, path) => {
    const direct = follow(record.values.includes ?? [], path, 'includes', access.find);
    const closure = new Set(direct.flatMap((one) => [one, ...one.includes]));
    return buildAccess(record, lookup, [...closure]);
  });
  const aroundWork = tables.standIn('around work', [shop, ...goods, finding.standIn, access.standIn]);
  const labour = ofKind(kinds.labour, [aroundWork], (record, path) => buildLabour(record, lookup, (names) => follow(names, path, 'needs', labour.find)));
  const lookup: Lookup = { shop, scope, problems, aroundWork, part: part.find, sublet: sublet.find, finding: finding.find, fee: fee.find, tool: tool.find, access: access.find, labour: labour.find };
  return lookup;

  function ofKind<F extends Kind & { readonly word: NamedKind }, T>(kind: F, madeFrom: readonly unknown[], build: (record: RecordOf<F>, path: readonly string[]) => T | undefined): Table<T> {
    return tables.table(kind.word, [...madeFrom, ...scope.named(kind.word)], (name, path) => {
      const record = scope.find(kind.word, name);
      return record === undefined ? undefined : build(record as RecordOf<F>, [...path, name]);
    });
  }

  function follow<T>(names: readonly Name[], path: readonly string[], word: string, next: (name: string, path: readonly string[]) => T | undefined): T[] {
    const found: T[] = [];
    for (const { name, at } of names) {
      if (path.includes(name)) reportCircle(name, at, path, word);
      else {
        const one = next(name, path);
        if (one !== undefined && !found.includes(one)) found.push(one);
      }
    }
    return found;
  }

  function reportCircle(name: string, at: Span, path: readonly string[], word: string): void {
    problems.push(problem(rules.circular, at, { chain: [...path.slice(path.indexOf(name)), name], word }));
  }
}

function onlyOne<F extends Kind>(records: readonly Record[], kind: F, problems: Problem[]): RecordOf<F> | undefined {
  const [first, ...others] = records.filter((record) => record.kind.word === kind.word);
  for (const other of others) problems.push(problem(rules.onlyOnce, other.at, { kind: kind.word }, first === undefined ? undefined : { at: first.at, says: 'The first one' }));
  return first as RecordOf<F> | undefined;
}

function buildHeader(record: RecordOf<typeof kinds.estimate>, problems: Problem[]): Header {
  const { values } = record;
  return remember(record, [], problems, (own) => {
    const { interest, technicians } = values;
    if (interest !== undefined && interest.likely.gt(100)) own.push(problem(decisionRules.interestTooHigh, interest.at, { written: interest.likely.toFixed() }));
    return {
      ...sourceOf(record), title: record.title?.text ?? '', written: values.written?.iso, start: values.start?.iso, valid: values.valid,
      answer: values.answer, technicians: technicians === undefined ? undefined : wholeFrom(technicians), interest,
    };
  });
}

/** A count of people: whole, and at least one. */
function wholeFrom({ likely }: { readonly likely: { readonly toNumber: () => number } }): number {
  return Math.max(1, Math.floor(likely.toNumber()));
}

function buildVehicle(record: RecordOf<typeof kinds.vehicle>): Vehicle {
  const { values } = record;
  return remember(record, [], [], () => ({ ...sourceOf(record), title: record.title?.text ?? '', vin: values.vin?.text, built: values.built?.iso, modelYear: values.modelYear?.likely.toNumber(), odometer: values.odometer, worth: values.worth, unrepaired: values.unrepaired, downtime: values.downtime }));
}
