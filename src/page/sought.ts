/**
 * The figure that the reader asked for from the text. It may not be on the page yet, so it is looked for again when
 * the page changes. The keyboard stays in the text; whoever comes over to the page then starts at the figure.
 */
export class Sought {
  private figure: string | undefined;
  private shown: HTMLElement | undefined;

  constructor(private readonly page: HTMLElement) {
    window.addEventListener('focus', () => {
      if (this.shown?.isConnected === true && document.activeElement === document.body) this.shown.focus({ preventScroll: true });
    });
    for (const done of ['pointerdown', 'keydown'] as const) document.addEventListener(done, () => this.forget());
  }

  seek(figure: string): void {
    this.forget();
    this.figure = figure;
    this.again();
  }

  /** Brings it into view once it is there, and marks it for as long as it is the same element. */
  again(): void {
    if (this.figure === undefined) {
      if (this.shown?.isConnected === true) this.shown.classList.add(MARK);
      return;
    }
    const found = this.page.querySelector<HTMLElement>(`[data-figure="${CSS.escape(this.figure)}"]`);
    if (found === null) return;
    this.figure = undefined;
    this.shown = found;
    const list = found.closest('details');
    if (list !== null) list.open = true;
    found.classList.add(MARK);
    found.scrollIntoView({ block: 'center' });
  }

  private forget(): void {
    this.figure = undefined;
    this.shown?.classList.remove(MARK);
    this.shown = undefined;
  }
}

const MARK = 'sought';
