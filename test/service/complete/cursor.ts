import { createLanguageService, type Completion, type LanguageService } from '../../../src/service/index.js';
import { withDefaults } from '../../../src/service/complete/snippet.js';
import { MemoryHost, uriOf } from '../../support/fixture.js';

export const URI = uriOf('estimate.yard');

/** The day on which fixtures are asked about; a Tuesday. */
export const TODAY = '2027-03-09';

/** What most fixtures stand on: a shop, two ways in, jobs, parts, and an option. Fixtures stand behind it. */
export const BENCH = `steelyard 1
shop "Bench"
  currency USD
  rate bench "Bench work" 100.00 usual
  rate wiring "Wiring" 120.00
  fee supplies "Supplies" 5% of labour
  tool fill "Vacuum filler"
finding low "Cylinder low"
access lifted "Engine lifted"
  remove 1 h
  refit 1.5 h
access out "Engine out"
  remove 5 h
  refit 6 h
labour pump "Coolant pump"
  takes 9 h
  takes 2 h with out
labour head "Head" 7 h with out
part seal "Seal" 2 at 5.85 new arrives 3 d warranty 12 mo
part bolts "Bolts" 8 at 4.00 new
sublet face "Face" 30.00 back in 4 d
fee tow "Tow" 80.00
option fix "Fix"
  do pump
`;

export interface Cursor {
  readonly service: LanguageService;
  readonly text: string;
  readonly offset: number;
  readonly offers: readonly Completion[];
}

/** Reads a fixture with `$0` where the cursor is. `files` are those that the host lists, beside the estimate. */
export function cursorIn(marked: string, files?: Readonly<Record<string, string>>): Cursor {
  const offset = marked.indexOf('$0');
  const text = marked.replace('$0', '');
  const host = new ListingHost(Object.keys(files ?? {}).map(uriOf));
  for (const [name, content] of Object.entries(files ?? {})) host.set(name, content);
  host.set('estimate.yard', text);
  const service = createLanguageService(host);
  return { service, text, offset, offers: service.completions(URI, offset, TODAY) };
}

export class ListingHost extends MemoryHost {
  constructor(private readonly listed: readonly string[]) {
    super();
  }

  readonly files = (): readonly string[] => this.listed;
}

/** Text with a completion's edit made, every tab stop at its default. */
export function accepted(text: string, { edit, snippet }: Completion): string {
  return text.slice(0, edit.range.start) + (snippet ? withDefaults(edit.text) : edit.text) + text.slice(edit.range.end);
}

/** The lines, from the cursor's, after the offer of a label is accepted. */
export function after(marked: string, label: string, files?: Readonly<Record<string, string>>): string {
  const { text, offset, offers } = cursorIn(marked, files);
  const offer = offers.find((one) => one.label === label);
  if (offer === undefined) throw new Error(`“${label}” is not offered; there is: ${offers.map((one) => one.label).join(' | ')}`);
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  return accepted(text, offer).slice(start);
}

export function labels(marked: string, files?: Readonly<Record<string, string>>): string[] {
  return cursorIn(marked, files).offers.map(({ label }) => label);
}

