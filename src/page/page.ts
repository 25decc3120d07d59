import { Here } from './here.js';
import { readPageState, readToPage, type Kept, type PageState, type ToEditor } from './messages.js';
import { fillPlaces, patchChildren } from './patch.js';
import { Sought } from './sought.js';
import { TrialFields } from './trial-fields.js';

interface EditorApi {
  readonly postMessage: (message: ToEditor) => void;
  readonly getState: () => unknown;
  readonly setState: (state: PageState) => void;
}
declare function acquireVsCodeApi(): EditorApi;

const editor = acquireVsCodeApi();
const page = document.getElementById('page') as HTMLElement;
const parser = new DOMParser();
let estimate: string | undefined;
let remembering = false;
/** What was kept of the page when it was last left; until the later part is there, it can't all be put back. */
let kept: PageState | undefined;
/** What the editor asked to be kept. */
let forEditor: Kept = { unfolded: [], tried: [] };
const here = new Here(page);
const sought = new Sought(page);
const fields = new TrialFields(page, (figure, value) => {
  if (estimate !== undefined) editor.postMessage({ kind: 'try', estimate, figure, value });
});

window.addEventListener('message', ({ data }) => {
  const message = readToPage(data);
  if (message === undefined) return;
  switch (message.kind) {
    case 'show':
      forEditor = message.kept;
      return show(message.estimate, message.markup);
    case 'later': return fill(message.estimate, message.markup);
    case 'here': return message.estimate === estimate ? here.mark(message.rows) : undefined;
    case 'seek': return message.estimate === estimate ? sought.seek(message.figure) : undefined;
  }
});

document.addEventListener('click', ({ target }) => {
  if (!(target instanceof Element)) return;
  const act = target.closest('[data-act]')?.getAttribute('data-act');
  if (estimate !== undefined && (act === 'write' || act === 'back')) {
    fields.settle(act);
    editor.postMessage({ kind: act, estimate });
    return;
  }
  const unfold = target.closest('[data-unfold]');
  const row = unfold?.getAttribute('data-unfold');
  if (estimate !== undefined && unfold !== null && typeof row === 'string') {
    editor.postMessage({ kind: unfold.getAttribute('aria-expanded') === 'true' ? 'fold' : 'unfold', estimate, row });
    return;
  }
  // A field is typed in; nothing leads away from it.
  if (target.closest('.try') !== null) return;
  const chosen = target.closest('[data-figure], [data-row]');
  const figure = chosen?.getAttribute('data-figure') ?? chosen?.getAttribute('data-row');
  // Text that was marked with the mouse is to be copied, not followed.
  if (estimate === undefined || typeof figure !== 'string' || getSelection()?.isCollapsed === false) return;
  editor.postMessage({ kind: 'go', estimate, figure });
});

window.addEventListener('scroll', remember, { passive: true });
document.addEventListener('toggle', remember, { capture: true });
editor.postMessage({ kind: 'ready' });

function show(of: string, markup: string): void {
  const first = estimate === undefined;
  const another = !first && estimate !== of;
  estimate = of;
  if (another) page.replaceChildren();
  fields.keep(() => patchChildren(page, bodyOf(markup)));
  if (another) window.scrollTo(0, 0);
  kept = first ? readPageState(editor.getState()) : kept;
  if (kept?.estimate !== of) kept = undefined;
  restore();
  sought.again();
  here.again();
  remember();
}

function fill(of: string, markup: string): void {
  if (estimate !== of) return;
  const from = window.scrollY;
  fields.keep(() => fillPlaces(page, bodyOf(markup)));
  // Whoever has scrolled meanwhile has a place already.
  if (Math.abs(from - (restoredTo ?? from)) < 2) restore();
  kept = undefined;
  sought.again();
  here.again();
  remember();
}

function bodyOf(markup: string): HTMLElement {
  return parser.parseFromString(markup, 'text/html').body;
}

let restoredTo: number | undefined;

function restore(): void {
  if (kept === undefined) return;
  for (const list of lists()) list.open = kept.open.includes(list.dataset['key'] ?? '');
  window.scrollTo(0, kept.scroll);
  restoredTo = window.scrollY;
}

/** At most once per frame: scrolling reports much oftener than anybody can see. */
function remember(): void {
  if (remembering) return;
  remembering = true;
  requestAnimationFrame(() => {
    remembering = false;
    if (estimate === undefined || kept !== undefined) return;
    const open = lists().filter((list) => list.open).flatMap((list) => list.dataset['key'] ?? []);
    editor.setState({ estimate, scroll: Math.max(0, window.scrollY), open, ...forEditor });
  });
}

function lists(): HTMLDetailsElement[] {
  return [...page.querySelectorAll('details')];
}
