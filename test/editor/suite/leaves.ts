// The values of a piece of JSON by their paths, each ticked off when it is asked for.

/** What an item of a list is called in a path: an option by its name, all else by its place. */
function nameOf(item: unknown, index: number, path: string): string {
  const name = path === 'options' && typeof item === 'object' && item !== null && 'name' in item ? item.name : undefined;
  return typeof name === 'string' ? name : String(index);
}

export class Leaves {
  private readonly values = new Map<string, string>();
  private readonly taken = new Set<string>();

  constructor(json: object) {
    this.add(json, '');
  }

  /** The value at a path; an error where there is none. */
  take(path: string): string {
    const value = this.values.get(path);
    if (value === undefined) throw new Error(`There is nothing at ${path}.`);
    this.taken.add(path);
    return value;
  }

  has(path: string): boolean {
    return this.values.has(path);
  }

  /** Names of options. */
  options(): readonly string[] {
    return [...new Set([...this.values.keys()].flatMap((path) => /^options\.([^.]+)\./.exec(path)?.[1] ?? []))];
  }

  /** Paths that nobody asked for; null and a figure of nothing are nothing to show. */
  left(): readonly string[] {
    return [...this.values].filter(([path, value]) => !this.taken.has(path) && value !== 'null' && !/^0(\.0+)?$/.test(value)).map(([path]) => path);
  }

  private add(value: unknown, path: string): void {
    if (typeof value !== 'object' || value === null) this.values.set(path, String(value));
    else if (Array.isArray(value)) value.forEach((item, i) => this.add(item, `${path}.${nameOf(item, i, path)}`));
    else for (const [key, item] of Object.entries(value)) this.add(item, path === '' ? key : `${path}.${key}`);
  }
}
