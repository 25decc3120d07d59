import { FIGURE } from './messages.js';
import { stepped } from './stepped.js';

/** A pause after which what was typed is taken as meant. */
const PAUSE = 150;

/** The fields in which other values are tried: what is typed is told after a pause, or at once with Enter. */
export class TrialFields {
  private timer: ReturnType<typeof setTimeout> | undefined;
  private waits: HTMLInputElement | undefined;

  constructor(private readonly page: HTMLElement, private readonly tell: (figure: string, value: string) => void) {
    page.addEventListener('input', ({ target }) => {
      if (isField(target)) this.soon(target);
    });
    page.addEventListener('change', ({ target }) => {
      if (isField(target)) this.now(target);
    });
    page.addEventListener('keydown', (event) => {
      if (!isField(event.target)) return;
      const up = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[event.key];
      if (event.key === 'Enter') this.now(event.target);
      else if (event.key === 'Escape') this.back(event.target);
      else if (up !== undefined) {
        event.preventDefault();
        this.step(event.target, typed(event.target), up);
      }
    });
    page.addEventListener('pointerdown', (event) => this.drag(event));
  }

  /** Changes the page, and leaves the keyboard in the field where it was; other fields show what they stand for. */
  keep(change: () => void): void {
    const active = document.activeElement;
    change();
    if (isField(active) && active.isConnected && document.activeElement !== active) active.focus({ preventScroll: true });
    for (const field of this.page.querySelectorAll<HTMLInputElement>('[data-try]')) {
      const shown = field.getAttribute('value') ?? '';
      if (field === document.activeElement || field.value === shown) continue;
      show(field, shown);
    }
  }

  /** The trials end; what was typed last is told before they are written. The button goes, so the keyboard goes to the top of the page. */
  settle(act: 'write' | 'back'): void {
    if (act === 'write' && this.waits !== undefined) this.now(this.waits);
    this.forget();
    // The page is made anew in parts, some later than others; fields go back at once.
    if (act === 'back') for (const field of this.page.querySelectorAll<HTMLInputElement>('[data-try]')) show(field, field.dataset['today'] ?? '');
    this.page.focus({ preventScroll: true });
  }

  /** The word before a field is a handle: dragged to the right the value grows, to the left it shrinks. */
  private drag(start: PointerEvent): void {
    const handle = start.target instanceof Element ? start.target.closest('.handle') : null;
    const field = handle?.closest('.try')?.querySelector('[data-try]');
    if (handle === null || !isField(field) || start.button !== 0) return;
    start.preventDefault();
    const from = typed(field);
    const moved = ({ clientX }: PointerEvent): void => this.step(field, from, Math.round((clientX - start.clientX) / DRAG));
    const end = (): void => {
      removeEventListener('pointermove', moved);
      for (const done of ENDS) removeEventListener(done, end);
    };
    addEventListener('pointermove', moved);
    for (const done of ENDS) addEventListener(done, end);
    field.focus({ preventScroll: true });
  }

  private step(field: HTMLInputElement, from: string, steps: number): void {
    const value = stepped(from, field.dataset['today'] ?? from, steps);
    if (value === undefined || value === field.value) return;
    field.value = value;
    this.soon(field);
  }

  /** What stood in the field before it was typed in. */
  private back(field: HTMLInputElement): void {
    this.forget();
    show(field, field.getAttribute('value') ?? '');
  }

  private soon(field: HTMLInputElement): void {
    mark(field);
    this.forget();
    this.waits = field;
    this.timer = setTimeout(() => this.now(field), PAUSE);
  }

  private now(field: HTMLInputElement): void {
    this.forget();
    mark(field);
    const value = typed(field);
    const figure = field.dataset['try'];
    if (figure !== undefined && FIGURE.test(value) && value !== field.getAttribute('value')) this.tell(figure, value);
  }

  private forget(): void {
    clearTimeout(this.timer);
    this.waits = undefined;
  }
}

/** Pixels that a handle is dragged for one step. */
const DRAG = 4;
const ENDS = ['pointerup', 'pointercancel', 'blur'] as const;

function show(field: HTMLInputElement, value: string): void {
  field.setAttribute('value', value);
  field.value = value;
  mark(field);
}

/** A field that holds no figure says so, and what to write; nothing is tried until it does. */
function mark(field: HTMLInputElement): void {
  const word = field.parentElement?.querySelector('.no-figure');
  if (FIGURE.test(typed(field))) {
    field.removeAttribute('aria-invalid');
    word?.remove();
    return;
  }
  field.setAttribute('aria-invalid', 'true');
  if (word !== null && word !== undefined) return;
  const made = document.createElement('span');
  made.className = 'no-figure';
  made.role = 'alert';
  made.textContent = `no figure; as in ${field.dataset['today'] ?? '1250.00'}, or Esc`;
  field.after(made);
}

/** The page writes thousands with commas, so they may be typed too. */
const GROUPED = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/;

function typed(field: HTMLInputElement): string {
  const text = field.value.trim();
  return GROUPED.test(text) ? text.replaceAll(',', '') : text;
}

function isField(target: unknown): target is HTMLInputElement {
  return target instanceof HTMLInputElement && target.dataset['try'] !== undefined;
}
