import { FIGURE } from './messages.js';

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
      if (event.key === 'Enter' && isField(event.target)) this.now(event.target);
    });
  }

  /** Changes the page, and leaves the keyboard in the field where it was; other fields show what they stand for. */
  keep(change: () => void): void {
    const active = document.activeElement;
    change();
    if (isField(active) && active.isConnected && document.activeElement !== active) active.focus({ preventScroll: true });
    for (const field of this.page.querySelectorAll<HTMLInputElement>('[data-try]')) {
      const shown = field.getAttribute('value') ?? '';
      if (field === document.activeElement || field.value === shown) continue;
      field.value = shown;
      mark(field);
    }
  }

  /** The trials end; what was typed last is told before they are written. The button goes, so the keyboard goes to the top of the page. */
  settle(act: 'write' | 'back'): void {
    if (act === 'write' && this.waits !== undefined) this.now(this.waits);
    this.forget();
    this.page.focus({ preventScroll: true });
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

/** A field that holds no figure says so; nothing is tried until it does. */
function mark(field: HTMLInputElement): void {
  if (FIGURE.test(typed(field))) field.removeAttribute('aria-invalid');
  else field.setAttribute('aria-invalid', 'true');
}

function typed(field: HTMLInputElement): string {
  return field.value.trim();
}

function isField(target: unknown): target is HTMLInputElement {
  return target instanceof HTMLInputElement && target.dataset['try'] !== undefined;
}
