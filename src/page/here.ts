/** What on the page comes from the line under the cursor. It is marked where it stands; nothing moves. */
export class Here {
  private rows: readonly string[] = [];

  constructor(private readonly page: HTMLElement) {}

  mark(rows: readonly string[]): void {
    this.rows = rows;
    for (const one of this.page.querySelectorAll(`.${MARK}`)) one.classList.remove(MARK);
    for (const one of this.page.querySelectorAll(`[${CURRENT}]`)) one.removeAttribute(CURRENT);
    this.again();
  }

  /** The page was made anew, and knows nothing of marks. */
  again(): void {
    for (const row of this.rows) {
      const name = CSS.escape(row);
      for (const one of this.page.querySelectorAll(`[data-row="${name}"], [data-figure="${name}"]`)) {
        const marked = one.closest('[data-row], li') ?? one;
        marked.classList.add(MARK);
        one.setAttribute(CURRENT, 'location');
      }
    }
  }
}

const MARK = 'here';
const CURRENT = 'aria-current';
