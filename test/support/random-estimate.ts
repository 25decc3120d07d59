import fc from 'fast-check';
import { Draw } from './random-draw.js';
import { calendarWait, hours, money, percentage, quantity, workingWait, type Coins } from './random-figures.js';

/**
 * Texts of whole, valid estimates: every one checks without errors (warnings are allowed). They are made from a row of
 * numbers, so a failing case shrinks to a short and plain text.
 */
export const randomEstimate: fc.Arbitrary<string> = fc
  .noBias(fc.array(fc.nat({ max: 65_535 }), { maxLength: 700, size: 'max' }))
  .map((numbers) => new EstimateWriter(new Draw(numbers)).text());

const CONDITIONS = ['new', 'aftermarket', 'rebuilt', 'used'] as const;
const CAUTIONS = ['lifting', 'fuel', 'battery', 'coolant', 'refrigerant', 'oil', 'solvents'] as const;
const TITLES = ['Front cover', 'Rear head', 'Pump, 50/50 mix', 'Seal # 4', 'Pan \\"upper\\"', 'Mount', 'Chain and guides', 'Cooler line'] as const;
/** Without a code the shop names no currency, and money has two decimals. */
const CURRENCIES: readonly Coins[] = [{ code: '', digits: 2 }, { code: 'USD', digits: 2 }, { code: 'USD', digits: 2 }, { code: 'JPY', digits: 0 }, { code: 'KWD', digits: 3 }];

/** So many chances in a file at most: what may happen together is worked out case by case. */
const MOST_CHANCES = 6;

type Phase = 'first' | 'last' | undefined;

interface Job {
  readonly name: string;
  readonly done: Phase;
  /** Sets of ways in with which it can be done. */
  readonly modes: readonly (readonly string[])[];
  /** Names of the jobs that it needs. */
  readonly needs: readonly string[];
}

class EstimateWriter {
  private readonly coins: Coins;
  private readonly rates: readonly string[];
  private readonly owned: readonly string[];
  private readonly hired: readonly string[];
  private readonly findings: readonly string[];
  private readonly parts: readonly string[];
  private readonly sublets: readonly string[];
  /** Outside work that no job uses, so that jobs may wait for it and it for the first job. */
  private readonly loose: readonly string[];
  /** Work that only chances bring. */
  private readonly spares: readonly string[];
  private readonly fees: readonly string[];
  private readonly ways: readonly string[];
  /** For each way in all that it gives, itself among it. */
  private readonly gives = new Map<string, ReadonlySet<string>>();
  private readonly jobs: Job[] = [];
  private readonly chances: string[] = [];
  private chancesLeft = MOST_CHANCES;

  constructor(private readonly draw: Draw) {
    const count = (stem: string, most: number, least = 0) => Array.from({ length: draw.between(least, most) }, (_, i) => `${stem}${i + 1}`);
    this.coins = draw.pick(CURRENCIES);
    this.rates = count('bench-', 4, 1);
    this.owned = count('owned-tool-', 1);
    this.hired = count('tool', 2);
    this.findings = count('seen-', 2);
    this.parts = count('piece', 4);
    this.sublets = count('sent', 2);
    this.fees = count('toll', 2);
    this.ways = count('way-in-', 4);
    this.loose = count('loose-', 1);
    this.spares = count('spare-', 2);
  }

  text(): string {
    const { draw } = this;
    const blocks = [this.shop()];
    if (draw.chance(50)) blocks.push(this.header());
    if (draw.chance(60)) blocks.push(this.vehicle());
    for (const name of this.findings) blocks.push([`finding ${name} ${this.title()}`, ...(draw.chance(30) ? this.measured() : [])]);
    for (const name of this.hired) blocks.push([this.line(`tool ${name} ${this.title()}`, draw.chance(70) ? this.money(90) : '', draw.chance(60) ? `arrives ${workingWait(draw)}` : '')]);
    for (const name of this.parts) blocks.push(this.part(name, 0));
    for (const name of this.sublets) blocks.push(this.sublet(name, 0));
    for (const name of this.fees) blocks.push([this.fee(name)]);
    for (const name of this.spares) blocks.push([`labour ${name} ${this.title()} ${hours(draw)}${this.wayOfChance()}`, ...this.spareBelow()]);
    const jobs = draw.upTo(4);
    for (const name of this.loose) blocks.push([...this.sublet(name, 0), ...(jobs > 0 && draw.chance(50) ? ['  after job-1'] : [])]);
    for (const name of this.ways) blocks.push(this.access(name));
    for (let i = 1; i <= jobs; i++) blocks.push(this.labour(`job-${i}`));
    if (this.jobs.length > 0 && draw.chance(40)) blocks.push([`consider ${this.names(draw.atLeastOne(this.jobs.map((job) => job.name)))}`]);
    const options = draw.between(1, 4);
    for (let i = 1; i <= options; i++) blocks.push(this.option(`option-${i}`));
    if (this.chances.length > 0 && draw.chance(40)) blocks.push(this.inspection('look-1'));
    if (draw.chance(25)) blocks.push(this.coverage(jobs));
    const lines = ['steelyard 1'];
    for (const block of draw.chance(70) ? draw.shuffled(blocks) : blocks) {
      if (draw.chance(30)) lines.push('');
      if (draw.chance(15)) lines.push('# an aside, "not" 1,000.00 of it counts');
      for (const line of block) lines.push(draw.chance(5) ? `${line}   # so it was said` : line);
    }
    return `${lines.join('\n')}\n`;
  }

  /** What was measured may speak against the first option. */
  private measured(): string[] {
    const readings = [1, 2, 3, 4].map(() => this.draw.between(90, 180));
    return [`  compression ${readings.join(' ')} psi`, ...((readings[0] as number) > 135 ? ['  rules out option-1'] : [])];
  }

  private shop(): string[] {
    const { draw } = this;
    const lines = ['shop "Invented Bay"'];
    if (this.coins.code !== '') lines.push(`  currency ${this.coins.code}`);
    if (draw.chance(60)) lines.push(`  rounding ${draw.pick(['half-up', 'half-even', 'half-down'])}`);
    if (draw.chance(60)) lines.push(`  workday ${draw.pick(['8 h', '7.5 h', '480 min'])}`);
    if (draw.chance(30)) lines.push('  closed saturday, sunday, 2026-12-25');
    if (draw.chance(20)) lines.push(`  technicians ${draw.between(1, 3)}`);
    const usual = draw.upTo(this.rates.length - 1);
    this.rates.forEach((name, i) => lines.push(this.line(`  rate ${name}`, draw.chance(60) ? this.title() : '', draw.chance(4) ? '0' : this.money(190), this.rates.length > 1 && i === usual ? 'usual' : '', draw.chance(25) ? `cost ${this.money(90)}` : '')));
    for (const on of ['', ' on sublets']) {
      const ends = new Set(Array.from({ length: draw.upTo(2) }, () => draw.between(1, 60) * 5));
      for (const end of draw.shuffled([...ends])) lines.push(`  markup ${percentage(draw, 90)} to ${end}${on}`);
      if (draw.chance(70)) lines.push(`  markup ${percentage(draw, 60)}${on}`);
    }
    const taxes = draw.upTo(3);
    for (let i = 1; i <= taxes; i++) {
      const on = draw.atLeastOne(['parts', 'labour', 'sublets', 'fees'], 45);
      lines.push(this.line(`  tax levy-${i}`, draw.chance(50) ? this.title() : '', percentage(draw, 25), `on ${on.join(', ')}`, draw.chance(70) ? `by ${draw.pick(['invoice', 'item'])}` : ''));
    }
    const free = draw.shuffled([...CONDITIONS]);
    while (free.length > 0 && draw.chance(45)) lines.push(`  core-tax ${draw.pick(['kept', 'refunded', 'none'])} on ${free.splice(0, draw.between(1, 3)).join(', ')}`);
    if (free.length === CONDITIONS.length && draw.chance(20)) lines.push(`  core-tax ${draw.pick(['kept', 'refunded', 'none'])}`);
    const fees = draw.upTo(2);
    for (let i = 0; i < fees; i++) lines.push(`  ${this.fee('')}`);
    for (const name of this.owned) lines.push(`  tool ${name} ${this.title()}`);
    return lines;
  }

  private header(): string[] {
    const { draw } = this;
    const lines = [`estimate ${this.title()}`];
    if (draw.chance(60)) lines.push(`  written 2026-${draw.pick(['02', '11'])}-${draw.between(10, 28)}`);
    if (draw.chance(60)) lines.push(`  start 2026-12-${draw.between(10, 31)}`);
    if (draw.chance(40)) lines.push(`  valid ${calendarWait(draw)}`);
    if (draw.chance(30)) lines.push(`  answer ${workingWait(draw)}`);
    if (draw.chance(20)) lines.push(`  technicians ${draw.between(1, 3)}`);
    if (draw.chance(30)) lines.push(`  interest ${draw.between(0, 24)}.${draw.between(0, 9)}%`);
    return lines;
  }

  private vehicle(): string[] {
    const { draw } = this;
    const lines = [`vehicle ${this.title()}`];
    if (draw.chance(30)) lines.push('  vin 11111111111111111');
    if (draw.chance(40)) lines.push('  built 2012-11');
    if (draw.chance(40)) lines.push(`  odometer ${draw.between(1, 60_000)} ${draw.pick(['mi', 'km'])}`);
    if (draw.chance(60)) lines.push(`  worth ${this.money(9000)}`);
    if (draw.chance(30)) lines.push('  model year 2013');
    if (draw.chance(35)) lines.push(`  unrepaired ${this.money(2500)}`);
    if (draw.chance(25)) lines.push(`  downtime ${this.money(60)}`);
    return lines;
  }

  /** Something that may happen, with what it then takes. */
  private chance(depth: number): string[] {
    const { draw } = this;
    if (this.chancesLeft === 0) return [];
    this.chancesLeft--;
    const indent = ' '.repeat(depth);
    const name = draw.chance(60) ? `risk-${MOST_CHANCES - this.chancesLeft}` : '';
    if (name !== '') this.chances.push(name);
    const lines = [this.line(`${indent}chance`, name, this.title(), `${draw.between(0, 99)}%`, draw.chance(25) ? 'comeback' : '')];
    const named: readonly (readonly [string, readonly string[]])[] = [['do', this.spares], ['fit', this.parts], ['send', this.sublets], ['charge', this.fees]];
    for (const [word, list] of named) {
      const some = draw.some(list, 25);
      if (some.length > 0) lines.push(`${indent}  ${word} ${this.names(some)}`);
    }
    if (draw.chance(30)) lines.push(`${indent}  labour ${this.title()} ${hours(draw)}${this.wayOfChance()}`);
    if (draw.chance(25)) lines.push(...this.sublet('', depth + 2));
    if (draw.chance(15)) lines.push(`${indent}  ${this.fee('')}`);
    if (lines.length === 1 || draw.chance(30)) lines.push(...this.part('', depth + 2));
    if (draw.chance(20)) lines.push(...this.chance(depth + 2));
    return lines;
  }

  /** Work that only a chance brings may take a way in that the option does not pay for. */
  private wayOfChance(): string {
    return this.ways.length > 0 && this.draw.chance(30) ? ` with ${this.draw.pick(this.ways)}` : '';
  }

  private inspection(name: string): string[] {
    const { draw } = this;
    const lines = [this.line(`inspect ${name} ${this.title()}`, draw.chance(80) ? this.money(150) : '', draw.chance(60) ? hours(draw, 2) : '', draw.chance(25) ? `class ${draw.pick(this.rates)}` : '')];
    for (const chance of draw.atLeastOne(this.chances)) lines.push(this.line(`  finds ${chance} ${draw.between(0, 100)}%`, draw.chance(60) ? `wrongly ${draw.between(0, 40)}%` : ''));
    return lines;
  }

  private coverage(jobs: number): string[] {
    const { draw } = this;
    const lines = [this.line(`coverage ${this.title()}`, draw.pick(['recall', 'campaign', 'bulletin', 'extended-warranty']))];
    if (draw.chance(50)) lines.push('  built from 2012-06', '  built to 2013-02-28');
    if (draw.chance(40)) lines.push('  years 2012, 2013');
    if (draw.chance(40)) lines.push(`  up to ${draw.between(1, 60_000)} ${draw.pick(['mi', 'km'])}`);
    if (draw.chance(40)) lines.push(`  within ${calendarWait(draw)}`);
    if (lines.length === 1 || draw.chance(30)) lines.push('  until 2027-12-31');
    if (draw.chance(50)) lines.push(`  covers ${jobs > 0 && draw.chance(50) ? 'job-1' : 'option-1'}`);
    return lines;
  }

  /** What work that only chances bring has with it. */
  private spareBelow(): string[] {
    const { draw } = this;
    const uses = draw.some([...this.parts, ...this.sublets], 25);
    return uses.length === 0 ? [] : [`  uses ${this.names(uses)}`];
  }

  private access(name: string): string[] {
    const { draw } = this;
    const earlier = [...this.gives.keys()];
    const includes = draw.some(earlier, 40);
    this.gives.set(name, new Set([name, ...includes.flatMap((one) => [...(this.gives.get(one) ?? [])])]));
    const lines = [`access ${name} ${this.title()}`];
    if (includes.length > 0) lines.push(`  includes ${this.names(includes)}`);
    const which = draw.upTo(3);
    if (which !== 1) lines.push(`  remove ${hours(draw, 8)}`);
    if (which !== 2) lines.push(`  refit ${hours(draw, 8)}`);
    if (draw.chance(25)) lines.push(`  class ${draw.pick(this.rates)}`);
    this.needsAndUses(lines, [], 30);
    if (draw.chance(30)) lines.push(...this.part('', 2));
    if (draw.chance(25)) lines.push(...this.sublet('', 2));
    if (draw.chance(20)) lines.push(`  caution ${this.names(draw.atLeastOne(CAUTIONS, 20))}`);
    if (draw.chance(20)) lines.push(...this.chance(2));
    return lines;
  }

  /** A job with a name at the left edge, or one without inside an option. */
  private labour(name: string, depth = 0): string[] {
    const { draw } = this;
    const indent = ' '.repeat(depth);
    const sets = new Map<string, readonly string[]>();
    const wanted = draw.between(1, 4);
    for (let i = 0; i < wanted; i++) {
      const set = this.ways.length === 0 || draw.chance(25) ? [] : draw.atLeastOne(this.ways, 20);
      sets.set([...set].sort().join(), draw.shuffled(set));
    }
    const modes = [...sets.values()];
    const said = (set: readonly string[]) => (set.length === 0 ? '' : `with ${this.names(set)}`);
    const onHead = draw.chance(50) || depth > 0 ? modes[0] : undefined;
    const head = this.line(`${indent}labour`, name, this.title(), ...(onHead === undefined ? [] : [draw.chance(20) ? `${draw.between(1, 6)} at` : '', hours(draw), said(onHead)]), draw.chance(30) ? `class ${draw.pick(this.rates)}` : '');
    const lines = modes.filter((set) => set !== onHead).map((set) => this.line(`${indent}  takes ${hours(draw)}`, said(set)));
    const needs = draw.some(this.jobs.map((job) => job.name), 20);
    this.needsAndUses(lines, needs, 30, indent);
    if (this.findings.length > 0 && draw.chance(20)) lines.push(`${indent}  because ${draw.pick(this.findings)}`);
    const done: Phase = draw.chance(20) ? draw.pick(['first', 'last'] as const) : undefined;
    if (done !== undefined) lines.push(`${indent}  done ${done}`);
    this.waits(lines, name, done, indent);
    if (draw.chance(20)) lines.push(...this.chance(depth + 2));
    const job: Job = { name, done, modes, needs };
    if (depth === 0) this.jobs.push(job);
    else this.own.push(job);
    return [head, ...lines];
  }

  /** Only what stands earlier is waited for, and nothing that is done later by its nature, so no circle can close. */
  private waits(lines: string[], name: string, done: Phase, indent: string): void {
    const { draw } = this;
    const order: readonly Phase[] = ['first', undefined, 'last'];
    const earlier = this.jobs.filter((job) => order.indexOf(job.done) <= order.indexOf(done)).map((job) => job.name);
    const goods = done === 'first' ? [] : [...this.parts, ...(name === 'job-1' || this.jobs[0]?.done === 'last' ? [] : this.loose)];
    const after = draw.some([...earlier, ...goods], 15);
    if (after.length > 0) lines.push(`${indent}  after ${this.names(after)}`);
    if (done === undefined && draw.chance(20)) lines.push(`${indent}  apart after ${hours(draw, 6)}`);
  }

  /** Jobs inside the option that is being written. */
  private own: Job[] = [];

  private needsAndUses(lines: string[], jobs: readonly string[], percent: number, indent = ''): void {
    const { draw } = this;
    const needs = [...jobs, ...draw.some([...this.owned, ...this.hired], percent)];
    if (needs.length > 0) lines.push(`${indent}  needs ${this.names(needs)}`);
    const uses = draw.some([...this.parts, ...this.sublets], percent);
    if (uses.length > 1 && draw.chance(30)) for (const one of uses) lines.push(`${indent}  uses ${one}`);
    else if (uses.length > 0) lines.push(`${indent}  uses ${this.names(uses)}`);
  }

  private part(name: string, depth: number): string[] {
    const { draw } = this;
    const indent = ' '.repeat(depth);
    const head = [`${indent}part`, name, this.title()];
    if (draw.chance(6)) return [this.line(...head, draw.chance(50) ? this.money(300) : '', 'customer-supplied')];
    if (draw.chance(45)) head.push(`${quantity(draw)} at`);
    head.push(draw.chance(40) ? `cost ${this.money(draw.chance(40) ? 900 : 60)}` : this.money(draw.chance(20) ? 4000 : 300));
    if (draw.chance(93)) head.push(draw.pick(CONDITIONS));
    if (draw.chance(30)) head.push(`arrives ${workingWait(draw)}`);
    const lines = [this.line(...head)];
    if (draw.chance(15)) lines.push(`${indent}  warranty ${calendarWait(draw)}`);
    if (draw.chance(25)) lines.push(...this.core(`${indent}  `));
    return lines;
  }

  private core(indent: string): string[] {
    const { draw } = this;
    const lines = [this.line(`${indent}core ${this.money(400)}`, draw.chance(50) ? `due ${calendarWait(draw)}` : '', draw.chance(20) ? `less ${this.money(200)}` : '')];
    if (draw.chance(40)) {
      lines.push(`${indent}  assemble ${hours(draw, 3)}`);
      if (draw.chance(40)) lines.push(`${indent}  class ${draw.pick(this.rates)}`);
    }
    if (draw.chance(30)) lines.push(this.line(`${indent}  keeps ${this.title()}`, draw.chance(70) ? `less ${this.money(90)}` : '', draw.chance(50) ? `worth ${this.money(90)}` : ''));
    return lines;
  }

  private sublet(name: string, depth: number): string[] {
    const { draw } = this;
    const price = draw.chance(50) ? `cost ${this.money(200)}` : this.money(200);
    return [this.line(`${' '.repeat(depth)}sublet`, name, this.title(), draw.chance(40) ? `${draw.between(1, 24)} at` : '', price, draw.chance(40) ? `back in ${workingWait(draw)}` : '')];
  }

  private fee(name: string): string {
    const { draw } = this;
    const amount = draw.chance(60) ? `${percentage(draw, 20)} of ${draw.atLeastOne(['labour', 'parts', 'sublets']).join(', ')}` : `${draw.chance(40) ? `${draw.between(1, 9)} d at ` : ''}${this.money(60)}`;
    return this.line('fee', name, this.title(), amount, draw.chance(40) ? `cap ${this.money(120)}` : '');
  }

  private option(name: string): string[] {
    const { draw } = this;
    this.own = [];
    const lines = [`option ${name} ${this.title()}`];
    const done = draw.some(this.jobs.map((job) => job.name), 55);
    if (done.length > 0) lines.push(`  do ${this.names(draw.shuffled(done))}`);
    const fit = draw.some(this.parts, 25);
    if (fit.length > 0) lines.push(`  fit ${this.names(fit)}`);
    const send = draw.some([...this.sublets, ...this.loose], 20);
    if (send.length > 0) lines.push(`  send ${this.names(send)}`);
    const charge = draw.some(this.fees, 40);
    if (charge.length > 0) lines.push(`  charge ${this.names(charge)}`);
    if (draw.chance(40)) lines.push(`  worth ${this.money(9000)}`);
    if (draw.chance(30)) lines.push(`  warranty ${calendarWait(draw)}`);
    if (draw.chance(30)) lines.push(`  lasts ${draw.between(5, 60)} ${draw.pick(['mo', 'wk'])}`);
    if (draw.chance(30)) lines.push(`  resale ${this.money(4000)}`);
    if (draw.chance(30)) lines.push(...this.chance(2));
    if (draw.chance(40)) lines.push(...this.labour('', 2));
    if (draw.chance(40)) lines.push(...this.part('', 2));
    if (draw.chance(25)) lines.push(...this.sublet('', 2));
    if (draw.chance(20)) lines.push(`  ${this.fee('')}`);
    if (draw.chance(20)) lines.push(`  harvest ${this.title()} ${this.money(150)}`);
    if (draw.chance(25)) lines.push(`  way ${this.pinned(done)}`);
    return lines;
  }

  /** Ways in with which all the work of the option can be done; all of them where no others will do. */
  private pinned(done: readonly string[]): string {
    const { draw } = this;
    const jobs = new Set<Job>();
    const take = (job: Job | undefined) => {
      if (job === undefined || jobs.has(job)) return;
      jobs.add(job);
      job.needs.forEach((name) => take(this.jobs.find((one) => one.name === name)));
    };
    done.forEach((name) => take(this.jobs.find((one) => one.name === name)));
    this.own.forEach(take);
    const some = draw.shuffled(draw.some(this.ways));
    const given = new Set(some.flatMap((way) => [...(this.gives.get(way) ?? [])]));
    const reached = [...jobs].every((job) => job.modes.some((set) => set.every((way) => given.has(way))));
    const chosen = reached ? some : this.ways;
    return chosen.length === 0 ? 'in-car' : this.names(chosen);
  }

  private money(most: number): string {
    return money(this.draw, this.coins, most);
  }

  private title(): string {
    return `"${this.draw.pick(TITLES)}"`;
  }

  private names(list: readonly string[]): string {
    return list.join(', ');
  }

  private line(...pieces: readonly string[]): string {
    return pieces.filter((piece) => piece !== '').join(' ');
  }
}
