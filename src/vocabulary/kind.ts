import type { ValueType } from './value.js';
import type { Zod, ZodType } from './zod.js';

/**
 * One thing that a kind of line can say. It is written either without a word in front (`bare`), or behind its
 * `lead` word; what has a lead may stand on the head line or on a line of its own below it.
 */
export interface Field<T = unknown> {
  readonly value: ValueType<T>;
  readonly says: string;
  /** The word, or two, that leads to the value. */
  readonly lead: string | undefined;
  readonly bare: boolean;
  /** The value is a list, and several lines of it add up to one. */
  readonly many: boolean;
  /** Marks the figure that counts how many, and is followed by `at`. */
  readonly counts: boolean;
}

// `any` is what lets maps of fields of different values be inferred precisely; nothing reads through it.
// eslint-disable-next-line @typescript-eslint/no-explicit-any
export type Fields = Readonly<Record<string, Field<any>>>;

export type ValueOf<F> = F extends Field<infer T> ? T : never;
export type ValuesOf<F extends Fields> = { readonly [K in keyof F]?: ValueOf<F[K]> };

export function bare<T>(value: ValueType<T>, says: string): Field<T> {
  return { value, says, lead: undefined, bare: true, many: false, counts: false };
}

export function led<T>(lead: string, value: ValueType<T>, says: string): Field<T> {
  return { value, says, lead, bare: false, many: false, counts: false };
}

/** Like `led`, but may stand on several lines. */
export function ledMany<T>(lead: string, value: ValueType<readonly T[]>, says: string): Field<readonly T[]> {
  return { value, says, lead, bare: false, many: true, counts: false };
}

/** The quantity in `12 at 5.85`. */
export function counted<T>(value: ValueType<T>, says: string): Field<T> {
  return { value, says, lead: undefined, bare: true, many: false, counts: true };
}

export type Presence = 'required' | 'optional' | 'none';

/** One kind of line: the one description that everything else reads. */
export interface Kind<F extends Fields = Fields> {
  readonly word: string;
  readonly says: string;
  /** Lines that show it, run as a test in the places where they may stand. */
  readonly example: string;
  readonly name: Presence;
  readonly title: Presence;
  /** What the title is called in messages and the manual. */
  readonly titleSays: string;
  readonly fields: F;
  /** Kinds that may stand below a line of this one. */
  readonly children: readonly Kind[];
  /** The zod record: the kind as data. */
  readonly record: (z: Zod) => ZodType;
  /** Fields by lead word; two-word leads under both words joined by a space. */
  readonly leads: ReadonlyMap<string, string>;
  /** First words of two-word leads, so that pairs are only tried where one may stand. */
  readonly firstOfTwo: ReadonlySet<string>;
  /** Keys of what may stand without a lead: the figure that counts, other figures, and words. */
  readonly bares: { readonly count: string | undefined; readonly figures: readonly string[]; readonly words: readonly string[] };
  readonly childByWord: ReadonlyMap<string, Kind>;
}

interface KindOptions<F extends Fields> {
  readonly word: string;
  readonly says: string;
  readonly example: string;
  readonly name?: Presence;
  readonly title?: Presence;
  readonly titleSays?: string;
  readonly fields: F;
  /** A list, or what makes one where kinds stand below each other. */
  readonly children?: readonly Kind[] | (() => readonly Kind[]);
}

export function defineKind<const F extends Fields>(options: KindOptions<F>): Kind<F> {
  const { word, says, example, name = 'none', title = 'none', titleSays = 'what the customer reads', fields } = options;
  // Made when somebody asks, who brings the library along: the editor never does.
  let record: ZodType | undefined;
  let children: readonly Kind[] | undefined;
  let childByWord: ReadonlyMap<string, Kind> | undefined;
  const leads = new Map<string, string>();
  for (const [key, field] of Object.entries(fields)) if (field.lead !== undefined) leads.set(field.lead, key);
  const bare = Object.keys(fields).filter((key) => fields[key]?.bare === true);
  const isFigure = (key: string) => fields[key]?.value.measures !== undefined;
  return Object.freeze({
    word, says, example, name, title, titleSays, fields, leads,
    firstOfTwo: new Set([...leads.keys()].filter((lead) => lead.includes(' ')).map((lead) => lead.slice(0, lead.indexOf(' ')))),
    bares: {
      count: bare.find((key) => fields[key]?.counts === true),
      figures: bare.filter((key) => isFigure(key) && fields[key]?.counts !== true),
      words: bare.filter((key) => !isFigure(key)),
    },
    record: (z: Zod) => (record ??= recordOf(options, z)),
    get children() {
      return (children ??= childrenIn(options));
    },
    get childByWord() {
      return (childByWord ??= new Map(childrenIn(options).map((child) => [child.word, child])));
    },
  });
}

function childrenIn({ children = [] }: KindOptions<Fields>): readonly Kind[] {
  return typeof children === 'function' ? children() : children;
}

/** The zod record of a kind, with its fields' own words as descriptions. */
function recordOf(options: KindOptions<Fields>, z: Zod): ZodType {
  const shape: Record<string, ZodType> = { kind: z.literal(options.word) };
  const presence = (wanted: Presence | undefined, schema: ZodType) => (wanted === 'required' ? schema : schema.optional());
  if ((options.name ?? 'none') !== 'none') shape['name'] = presence(options.name, z.string().describe('The name other lines use.'));
  if ((options.title ?? 'none') !== 'none') shape['title'] = presence(options.title, z.string().describe(options.titleSays ?? 'What the customer reads.'));
  for (const [key, field] of Object.entries(options.fields)) {
    shape[key] = field.value.schema(z).describe(field.says).optional();
  }
  for (const child of childrenIn(options)) {
    // Only asked for when it is used, since a kind may stand below itself.
    shape[child.word] = z.array(z.lazy(() => child.record(z))).describe(child.says).optional();
  }
  return z.strictObject(shape).describe(options.says);
}
