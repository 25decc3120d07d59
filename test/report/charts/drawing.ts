import { moneyOf } from '../../../src/weigh/index.js';
import { Decimal } from '../../../src/vocabulary/index.js';
import type { CostBar, FlipDistance, Layout, OutcomeCurve, RiskRange, Timeline, WaysOf } from '../../../src/report/charts/index.js';

export const layouts: readonly Layout[] = ['narrow', 'wide'];

export const money = moneyOf({ code: 'USD', digits: 2 }, 'half-up');
export const d = (value: number | string): Decimal => new Decimal(value);

/** One element of a drawing. */
export interface Element {
  readonly tag: string;
  readonly attributes: ReadonlyMap<string, string>;
}

export function elementsOf(markup: string, tag: string, look = ''): Element[] {
  return [...markup.matchAll(new RegExp(`<${tag}\\b([^<>]*)>`, 'g'))].map(([, inside = '']) => ({
    tag, attributes: new Map([...inside.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, name = '', value = '']) => [name, value])),
  })).filter(({ attributes }) => look.split(' ').every((one) => one === '' || (attributes.get('class') ?? '').split(' ').includes(one)));
}

export const number = ({ attributes }: Element, name: string): number => Number(attributes.get(name) ?? NaN);

/** What stands in texts, without tags and with its entities read. */
export function textsOf(markup: string): string[] {
  return [...markup.matchAll(/<text\b[^<>]*>(.*?)<\/text>/gs)].map(([, inside = '']) => unescaped(inside.replace(/<title>.*?<\/title>/gs, '').replace(/<[^>]*>/g, '')));
}

export function unescaped(text: string): string {
  return text.replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&quot;/g, '"').replace(/&#39;/g, "'").replace(/&amp;/g, '&');
}

/**
 * What every chart must be, whatever it shows: an image with a name and a description (WAI-ARIA 1.2, role img needs a
 * name; SVG-AAM takes it from title and desc; from memory), ids that are there once, references that lead somewhere,
 * tags closed in order, only finite numbers, no styles, scripts, events or addresses.
 */
export function faultsOf(markup: string): string[] {
  const faults: string[] = [];
  const ids = [...markup.matchAll(/\bid="([^"]*)"/g)].map(([, id = '']) => id);
  if (new Set(ids).size !== ids.length) faults.push('an id is there twice');
  for (const id of ids) if (!/^[A-Za-z0-9_-]+$/.test(id)) faults.push(`id ${id}`);
  for (const svg of elementsOf(markup, 'svg')) {
    if (svg.attributes.get('role') !== 'img') faults.push('no role');
    for (const id of (svg.attributes.get('aria-labelledby') ?? 'none').split(' ')) if (!new RegExp(`<(title|desc) id="${id}">[^<]+<`).test(markup)) faults.push(`no name or description ${id}`);
  }
  for (const [, id = ''] of markup.matchAll(/ fill="url\(#([^)"]*)\)"/g)) if (!ids.includes(id)) faults.push(`no pattern ${id}`);
  const open: string[] = [];
  for (const [, close, tag = '', self] of markup.matchAll(/<(\/?)([a-z][a-z0-9]*)\b[^<>]*?(\/?)>/gi)) {
    if (self === '/') continue;
    if (close === '') open.push(tag);
    else if (open.pop() !== tag) faults.push(`</${tag}> closes nothing`);
  }
  if (open.length > 0) faults.push(`${open.join(' ')} stays open`);
  const tags = [...markup.matchAll(/<[^<>]*>/g)].map(([tag]) => tag);
  if (tags.some((tag) => /NaN|Infinity|undefined|e[+-]\d/.test(tag.replace(/ (id|aria-labelledby|class|fill|data-key|aria-label)="[^"]*"/g, '')))) faults.push('a coordinate is no number');
  if (tags.some((tag) => /^<(script|style|img|foreignObject|a)\b|\sstyle=|\son[a-z]+=|javascript:|https?:/i.test(tag))) faults.push('style, script or address');
  for (const tag of tags) for (const [, value = ''] of tag.matchAll(/ (?:x|y|x1|y1|x2|y2|cx|cy|width|height)="([^"]*)"/g)) if (!/^-?\d+(\.\d{1,2})?$/.test(value)) faults.push(`coordinate ${value}`);
  return faults;
}

/** Everything to the right or left of the drawing; text is measured nowhere, so only shapes are looked at. */
export function outside(markup: string, width: number): string[] {
  const wrong: string[] = [];
  for (const rect of elementsOf(markup, 'rect')) if (number(rect, 'x') < 0 || number(rect, 'x') + number(rect, 'width') > width + 0.011) wrong.push([...rect.attributes.values()].join(' '));
  for (const one of elementsOf(markup, 'line')) for (const name of ['x1', 'x2']) if (number(one, name) < 0 || number(one, name) > width) wrong.push([...one.attributes.values()].join(' '));
  return wrong;
}

export const hostile = [
  '<img src=x onerror=alert(1)>', '</text></svg><script>alert(1)</script>', '"><style>*{display:none}</style>', '&lt;b&gt;', "' onload='x", '\u202eright to left', 'שלום עולם', 'مضخة الماء',
  'Donaudampfschifffahrtsgesellschaftskapitänsmützenabzeichen'.repeat(4), '', ' ', '𝒜'.repeat(90), '\u0000\u0007', ']]>', '<!--', 'url(#x)',
];

// Invented scenarios for the pictures that are kept.

export const bars: readonly CostBar[] = [
  { title: 'Rebuild the rear head', mark: undefined, parts: { penalty: d('2172.99'), access: d(0), labour: d('1990.80'), parts: d('465.46'), outside: d('1159.20'), fees: d('179.50'), cores: d(0), tax: d('46.76'), 'given-up': d(700) }, comesBack: d(0), inAll: { low: d('6318.71'), likely: d('6714.71'), high: d('7770.71') } },
  { title: 'Fit a used engine', mark: 'cheapest', parts: { penalty: d('2172.99'), access: d(0), labour: d('1486.80'), parts: d('1720.66'), outside: d(0), fees: d('179.50'), cores: d(50), tax: d('144.00'), 'given-up': d(700) }, comesBack: d(85), inAll: { low: d('5853.21'), likely: d('6368.95'), high: d('8060.09') } },
  { title: 'Sell it as it stands', mark: undefined, parts: { penalty: d(0), access: d(0), labour: d(222), parts: d(0), outside: d(0), fees: d('145.60'), cores: d(0), tax: d('10.56'), 'given-up': d(6700) }, comesBack: d(0), inAll: { low: d('7078.16'), likely: d('7078.16'), high: d('7078.16') } },
];

export const ways: readonly WaysOf[] = [
  { title: 'Both heads', ways: [{ title: 'Engine alone lifted out, gearbox stays', mark: 'chosen', money: d('3746.35'), hours: d('20.2') }, { title: 'Undertray, radiator and fans off', mark: 'runner-up', money: d('3889.37'), hours: d('21.5') }, { title: 'In the car', mark: undefined, money: d('4102.00'), hours: d('24.75') }] },
];

/** 2026-12-02 is a Wednesday, as `date -d 2026-12-02 +%A` says: the 5th and 6th are closed. */
export const plan: Timeline = {
  title: 'Both heads, engine out',
  dates: [20789, 20790, 20791, 20794, 20795], hoursPerDay: 8, finish: 34, ready: '2026-12-08',
  rows: [
    { title: 'Engine alone lifted out, gearbox stays: remove', kind: 'work', start: 0, end: 3.5, critical: true, from: '2026-12-02', to: '2026-12-02' },
    { title: 'Head gasket set, both heads arrives', kind: 'wait', start: 0, end: 8, critical: false, from: '2026-12-02', to: '2026-12-02' },
    { title: 'Both heads: take off, clean faces, refit: apart', kind: 'work', start: 3.5, end: 9, critical: true, from: '2026-12-02', to: '2026-12-03' },
    { title: 'Heads: check for cracks and flatness, reface: away', kind: 'wait', start: 9, end: 21, critical: true, from: '2026-12-03', to: '2026-12-04' },
    { title: 'Both heads: take off, clean faces, refit: the rest', kind: 'work', start: 21, end: 33.2, critical: true, from: '2026-12-04', to: '2026-12-08' },
    { title: 'Fill, bleed, road test, recheck', kind: 'work', start: 33.2, end: 34, critical: true, from: '2026-12-08', to: '2026-12-08' },
  ],
};

export const curves: readonly OutcomeCurve[] = [
  { title: 'Rebuild the rear head', mark: undefined, cases: Float64Array.from({ length: 1000 }, (_, i) => 6000 + ((i * 7919) % 1000) * 2), quoted: 6714.71 },
  { title: 'Fit a used engine', mark: 'cheapest', cases: Float64Array.from({ length: 1000 }, (_, i) => 5600 + (((i * 104729) % 1000) * ((i * 104729) % 1000)) / 300), quoted: 6368.95 },
  { title: 'Sell it as it stands', mark: undefined, cases: new Float64Array(1000).fill(7078.16), quoted: 7078.16 },
];

export const flips: readonly FlipDistance[] = [
  { line: 'Used engine, 92 000 mi', what: 'price', way: 'above', share: 0.2189, today: '1,350.00', value: '1,645.56', to: 'Rebuild the rear head' },
  { line: '2013 transverse V6', what: 'worth of the vehicle afterwards', way: 'below', share: 0.0861, today: '7,900.00', value: '7,219.55', to: 'Sell it as it stands' },
  { line: 'Shop supplies', what: '', way: 'above', share: 3.4, today: '5 %', value: '22 %', to: 'Sell it as it stands' },
  { line: 'Tow in', what: '', way: 'above', share: undefined, today: '0.00', value: '340.00', to: 'Rebuild the rear head' },
];

export const ranges: readonly RiskRange[] = [
  { title: 'Rebuild the rear head', mark: undefined, at: [6652, 6888, 7629], texts: ['6,652', '6,888', '7,629'] },
  { title: 'Fit a used engine', mark: 'cheapest', at: [6349, 6628, 7178], texts: ['6,349', '6,628', '7,178'] },
  { title: 'Sell it as it stands', mark: undefined, at: [7078, 7078, 7078], texts: ['7,078', '7,078', '7,078'] },
];
