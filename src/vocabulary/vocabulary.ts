import type { Kind } from './kind.js';
import { access } from './kinds/access.js';
import { authorised } from './kinds/authorised.js';
import { closed } from './kinds/closed.js';
import { consider } from './kinds/consider.js';
import { coverage } from './kinds/coverage.js';
import { estimate } from './kinds/estimate.js';
import { fee } from './kinds/fee.js';
import { finding } from './kinds/finding.js';
import { format } from './kinds/format.js';
import { inspect } from './kinds/inspect.js';
import { labour } from './kinds/labour.js';
import { note } from './kinds/note.js';
import { option } from './kinds/option.js';
import { part } from './kinds/part.js';
import { quoted } from './kinds/quoted.js';
import { shop } from './kinds/shop.js';
import { stage } from './kinds/stage.js';
import { started } from './kinds/started.js';
import { sublet } from './kinds/sublet.js';
import { tool } from './kinds/tool.js';
import { use } from './kinds/use.js';
import { vehicle } from './kinds/vehicle.js';

/** What may stand at the left edge of a file, in the order a writer meets them. Adding a kind adds a line here. */
export const fileKinds: readonly Kind[] = [format, use, shop, estimate, vehicle, finding, access, labour, part, sublet, fee, tool, consider, stage, option, inspect, coverage, quoted, authorised, started, closed, note];

/** Every kind, those that stand only below others too, each once. */
export const allKinds: readonly Kind[] = collect(fileKinds);

function collect(kinds: readonly Kind[]): Kind[] {
  const found = new Set<Kind>();
  const visit = (kind: Kind) => {
    if (found.has(kind)) return;
    found.add(kind);
    kind.children.forEach(visit);
  };
  kinds.forEach(visit);
  return [...found];
}

/** The kinds below which a line may start with this word, or with it and a second one; empty where none. */
export function kindsThatKnow(word: string): readonly string[] {
  return allKinds.filter((kind) => kind.childByWord.has(word) || kind.leads.has(word) || kind.firstOfTwo.has(word)).map((kind) => kind.word);
}
