import { problem, type Block, type Problem, type Span } from '../language/index.js';
import { is, kinds, valueRules, type Name, type Record, type RecordOf } from '../vocabulary/index.js';
import { againstIn } from './against.js';
import { buildAccess } from './build-access.js';
import { buildAuthorised, buildQuoted, buildStarted, type JobNames } from './build-authorised.js';
import { buildOption } from './build-option.js';
import { buildStage, checkStages } from './build-stage.js';
import { asItStands } from './as-it-stands.js';
import { buildChance, chancesByRecord } from './build-chance.js';
import { buildClosed } from './build-closed.js';
import { buildCoverage, buildInspection } from './build-decision.js';
import { buildFee } from './build-fee.js';
import { buildFinding } from './build-finding.js';
import { buildPart, buildSublet } from './build-goods.js';
import { buildLabour } from './build-labour.js';
import { byKind, type OfKind } from './by-kind.js';
import { buildShop, buildTool, noShop } from './build-shop.js';
import { MOST_BEHIND, withBehind } from './behind.js';
import { checkAmounts } from './check-currency.js';
import { checkFindings, checkVin } from './check-vehicle.js';
import { gather, type Sources } from './files.js';
import { withoutEchoes } from './echoes.js';
import { withoutHalfNames } from './names-in-two.js';
import * as decisionRules from './decision-rules.js';
import { pick, type Lookup } from './lookup.js';
import { upToMostInAll } from './most.js';
import * as rules from './name-rules.js';
import type { NamedKind } from './named-records.js';
import type { Option } from './option-types.js';
import { remember } from './remember.js';
import { Scope } from './scope.js';
import { sourceOf } from './source.js';
import { Tables, type Behind, type Table } from './tables.js';
import * as stageRules from './stage-rules.js';
import type { Estimate, Header, Vehicle } from './types.js';
import * as workRules from './work-rules.js';
import type { Access, Labour } from './work-types.js';

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
  const { records, first, lost } = gathered;
  const scope = new Scope(records, problems, first);

  const of = byKind(records, first);
  const shopRecord = onlyOne(of(kinds.shop), problems);
  const shop = shopRecord === undefined ? noShop : buildShop(shopRecord, problems);
  const { lookup, all } = lookupOver(scope, new Tables(first, problems), shop, sources, problems);

  const header = onlyOne(of(kinds.estimate), problems);
  const vehicle = onlyOne(of(kinds.vehicle), problems);
  const vehicleBuilt = vehicle === undefined ? undefined : buildVehicle(vehicle);
  const access = all.access();
  const stages = stageRecords(of(kinds.stage), problems).flatMap((record) => (record.name !== undefined && scope.find('stage', record.name.name) === record ? (buildStage(record, lookup) ?? []) : []));
  const findings = of(kinds.finding).flatMap((record) => (record.name === undefined ? buildFinding(record, sources.resolvePath, problems) : lookup.finding(record.name.name)) ?? []);
  const against = againstIn(findings);
  const options = upToMostInAll(optionRecords(of(kinds.option), problems).flatMap((record) => buildOption(record, stages, against, lookup) ?? []), problems);
  checkStages(stages, options, problems);
  const chanceNamed = (name: string) => {
    const record = scope.find('chance', name);
    return record === undefined || !is(record, kinds.chance) ? undefined : buildChance(record, lookup);
  };
  const chances = chancesByRecord(records, first, lookup);
  const job = jobNames(of(kinds.stage), options, header);
  const startedRecord = onlyOne(of(kinds.started), problems);
  const estimate: Estimate = {
    uri,
    shop,
    header: header === undefined ? undefined : buildHeader(header, problems),
    vehicle: vehicleBuilt,
    findings,
    access,
    chances,
    labour: all.labour(),
    parts: all.parts(),
    sublets: all.sublets(),
    fees: named(of(kinds.fee), lookup.fee),
    tools: named(of(kinds.tool), lookup.tool),
    stages,
    options: [...options, ...asItStands(vehicleBuilt, options, stages, problems)],
    consider: of(kinds.consider).flatMap((record) => pick(record.values.labour, lookup.labour)),
    inspections: of(kinds.inspect).flatMap((record) => buildInspection(record, lookup, chanceNamed) ?? []),
    coverages: of(kinds.coverage).flatMap((record) => buildCoverage(record, problems) ?? []),
    quoted: of(kinds.quoted).map((record) => buildQuoted(record, job, problems)),
    authorised: buildAuthorised(of(kinds.authorised), job, problems),
    started: startedRecord === undefined ? undefined : buildStarted(startedRecord, job, problems),
    closed: closedIn(of, { options, access, chances }, lookup),
    notes: of(kinds.note).flatMap((record) => record.title?.text ?? []),
  };
  for (const record of of(kinds.consider)) {
    if (record.broken || record.values.labour !== undefined) continue;
    problems.push(problem(valueRules.expected, record.at, { wanted: 'the name of a labour line', example: 'consider tensioner, plugs-job', found: undefined }));
  }
  checkAmounts(records, first, shop.currency, problems);
  checkVin(of(kinds.vehicle), problems);
  checkFindings(estimate, problems);
  const told = withoutEchoes(problems, estimate, lost);
  return { estimate, records, scope, problems: withoutHalfNames(told.problems, scope), spoiled: new Set([...told.spoiled, ...scope.spoiled, ...withoutTheirStage(of(kinds.stage), estimate)]), uses: gathered.uses, waitsFor: gathered.waitsFor };
}

/** What the job really took, held against what the rest of the file says. */
function closedIn(of: OfKind, { options, access, chances }: Pick<Estimate, 'options' | 'access' | 'chances'>, lookup: Lookup): Estimate['closed'] {
  const record = onlyOne(of(kinds.closed), lookup.problems);
  if (record === undefined) return undefined;
  const written = of(kinds.estimate)[0]?.values.written?.iso;
  const started = of(kinds.started)[0]?.values.on?.iso;
  return buildClosed(record, { options, access, chances, written, started }, lookup);
}

/** A stage is in every option: where one could not be made out, none of them is whole. */
function withoutTheirStage(records: readonly RecordOf<typeof kinds.stage>[], { stages, options }: Estimate): Block[] {
  const built = new Set<Record>(stages.map((stage) => stage.record));
  const lost = records.some((record) => !built.has(record));
  return lost ? options.map(({ record }) => record.block) : [];
}

/** More options than this can't be read side by side, and a file with thousands of them is no estimate. */
const MOST_OPTIONS = 40;

/** What is done before the customer decides, step by step; each is weighed with every option. */
const MOST_STAGES = 12;

function stageRecords(stages: readonly RecordOf<typeof kinds.stage>[], problems: Problem[]): readonly RecordOf<typeof kinds.stage>[] {
  const over = stages[MOST_STAGES];
  if (over !== undefined) problems.push(problem(stageRules.tooManyStages, over.at, { most: MOST_STAGES }));
  return stages.slice(0, MOST_STAGES);
}

function optionRecords(options: readonly RecordOf<typeof kinds.option>[], problems: Problem[]): RecordOf<typeof kinds.option>[] {
  const over = options[MOST_OPTIONS];
  if (over !== undefined) problems.push(problem(workRules.tooManyOptions, over.at, { most: MOST_OPTIONS }));
  return options.slice(0, MOST_OPTIONS);
}

/** The options and stages that records of the job may be for. */
function jobNames(records: readonly RecordOf<typeof kinds.stage>[], options: readonly Option[], header: RecordOf<typeof kinds.estimate> | undefined): JobNames {
  const stages = records.flatMap(({ name }) => name?.name ?? []);
  return { options: options.map(({ name }) => name), stages, written: header?.values.written?.iso };
}

/** Every entity of a kind at the left edge that has a name, the first of those that share one. */
function named<T>(records: readonly Record[], find: (name: string) => T | undefined): T[] {
  const found = new Set<T>();
  for (const { name } of records) {
    const one = name === undefined ? undefined : find(name.name);
    if (one !== undefined) found.add(one);
  }
  return [...found];
}

/** Everything of a kind that has a name; these kinds have names at the left edge alone. */
type All = { readonly [of in 'access' | 'labour' | 'parts' | 'sublets']: () => Estimate[of] };

/** What leads from one line to others of its kind. */
interface Following<T> {
  readonly word: string;
  readonly find: (name: string, path: readonly string[]) => T | undefined;
  readonly behind: (one: T) => readonly T[];
}

/** Builds each named thing once, and cuts circles where they close. */
function lookupOver(scope: Scope, tables: Tables, shop: Lookup['shop'], sources: Pick<Sources, 'resolvePath'>, problems: Problem[]): { readonly lookup: Lookup; readonly all: All } {
  const part = ofKind('part', [shop], (record) => buildPart(record, lookup));
  const sublet = ofKind('sublet', [shop], (record) => buildSublet(record, lookup));
  const finding = ofKind('finding', [], (record) => buildFinding(record, sources.resolvePath, problems));
  const fee = ofKind('fee', [shop], (record) => shop.fees.find((one) => one.record === record) ?? buildFee(record, problems));
  const tool = ofKind('tool', [shop], (record) => shop.tools.find((one) => one.record === record) ?? buildTool(record, false));
  const goods = [part.standIn, sublet.standIn, tool.standIn];
  const includes: Following<Access> = { word: 'includes', find: (name, path) => access.find(name, path), behind: (one) => one.includes };
  const access: Table<Access> = ofKind('access', [shop, ...goods], (record, name, path) => {
    const direct = follow(record.values.includes ?? [], [...path, name], includes);
    return buildAccess(record, lookup, [...withBehind(direct, includes.behind)]);
  }, includes.behind);
  const aroundWork = tables.standIn('around work', [shop, ...goods, finding.standIn, access.standIn]);
  const needs: Following<Labour> = { word: 'needs', find: (name, path) => labour.find(name, path), behind: (one) => one.needs };
  const labour: Table<Labour> = ofKind('labour', [aroundWork], (record, name, path) => buildLabour(record, lookup, (names) => follow(names, [...path, name], needs)), needs.behind);
  const lookup: Lookup = { shop, scope, problems, aroundWork, part: part.find, sublet: sublet.find, finding: finding.find, fee: fee.find, tool: tool.find, access: access.find, labour: labour.find };
  return { lookup, all: { access: access.all, labour: labour.all, parts: part.all, sublets: sublet.all } };

  function ofKind<W extends NamedKind, T>(word: W, madeFrom: readonly unknown[], build: (record: RecordOf<(typeof kinds)[W]>, name: string, path: readonly string[]) => T | undefined, behind?: Behind<T>): Table<T> {
    return tables.table(word, madeFrom, scope.named(word), (name, path) => {
      const record = scope.find(word, name);
      return record === undefined ? undefined : build(record as RecordOf<(typeof kinds)[W]>, name, path);
    }, behind);
  }

  function follow<T>(names: readonly Name[], path: readonly string[], { word, find, behind }: Following<T>): T[] {
    const found: T[] = [];
    let all: ReadonlySet<T> = new Set();
    for (const { name, at } of names) {
      if (path.includes(name)) {
        reportCircle(name, at, path, word);
        continue;
      }
      const one = path.length > MOST_BEHIND ? undefined : find(name, path);
      const grown = one === undefined || all.has(one) ? all : withBehind([...all, one], behind);
      if (path.length > MOST_BEHIND || grown.size > MOST_BEHIND) {
        // All that follows would be too much as well.
        problems.push(problem(rules.tooMuchBehind, at, { word, most: MOST_BEHIND }));
        break;
      }
      if (one !== undefined && !found.includes(one)) found.push(one);
      all = grown;
    }
    return found;
  }

  function reportCircle(name: string, at: Span, path: readonly string[], word: string): void {
    problems.push(problem(rules.circular, at, { chain: [...path.slice(path.indexOf(name)), name], word }));
  }
}

function onlyOne<R extends Pick<Record, 'at'> & { readonly kind: { readonly word: string } }>([first, ...others]: readonly R[], problems: Problem[]): R | undefined {
  for (const other of others) problems.push(problem(rules.onlyOnce, other.at, { kind: other.kind.word }, first === undefined ? undefined : { at: first.at, says: 'The first one' }));
  return first;
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
