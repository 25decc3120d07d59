import { readPageState, readToPage, type PageState, type ToEditor } from './messages.js';
import { patchChildren } from './patch.js';

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

window.addEventListener('message', ({ data }) => {
  const message = readToPage(data);
  if (message !== undefined) show(message.estimate, message.markup);
});

document.addEventListener('click', ({ target }) => {
  if (!(target instanceof Element)) return;
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
  patchChildren(page, parser.parseFromString(markup, 'text/html').body);
  if (another) window.scrollTo(0, 0);
  const kept = first ? readPageState(editor.getState()) : undefined;
  if (kept?.estimate === of) restore(kept);
  remember();
}

function restore({ scroll, open }: PageState): void {
  for (const list of lists()) list.open = open.includes(list.dataset['key'] ?? '');
  window.scrollTo(0, scroll);
}

/** At most once per frame: scrolling reports much oftener than anybody can see. */
function remember(): void {
  if (remembering) return;
  remembering = true;
  requestAnimationFrame(() => {
    remembering = false;
    if (estimate === undefined) return;
    const open = lists().filter((list) => list.open).flatMap((list) => list.dataset['key'] ?? []);
    editor.setState({ estimate, scroll: Math.max(0, window.scrollY), open });
  });
}

function lists(): HTMLDetailsElement[] {
  return [...page.querySelectorAll('details')];
}
