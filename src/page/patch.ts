/**
 * Makes one element's inside equal to another's and touches only what differs, so that scroll, focus, selection and
 * lists folded open stay as they are. Children with a `data-key` stay the same element wherever they move.
 */
export function patchChildren(shown: Element, wanted: ParentNode): void {
  const keyed = new Map<string, Element>();
  for (const child of shown.children) {
    const key = keyOf(child);
    if (key !== undefined && !keyed.has(key)) keyed.set(key, child);
  }
  let next: ChildNode | null = shown.firstChild;
  for (const want of [...wanted.childNodes]) {
    const key = keyOf(want);
    const found: ChildNode | null | undefined = key === undefined ? unkeyed(next) : keyed.get(key);
    if (key !== undefined) keyed.delete(key);
    if (found === undefined || found === null || !isAlike(found, want)) {
      shown.insertBefore(want, next);
      continue;
    }
    if (found === next) next = next.nextSibling;
    else shown.insertBefore(found, next);
    patchNode(found, want);
  }
  while (next !== null) {
    const gone = next;
    next = next.nextSibling;
    gone.remove();
  }
}

/**
 * Fills the places that are kept for what comes later, each from the piece with its key. From then on a place keeps
 * what it holds, marked as busy, until it is filled again.
 */
export function fillPlaces(shown: Element, wanted: ParentNode): void {
  for (const want of wanted.children) {
    const place = [...shown.children].find((child) => isLater(child) && keyOf(child) === keyOf(want));
    if (place === undefined) continue;
    place.setAttribute(FILLED, '');
    place.removeAttribute(BUSY);
    patchChildren(place, want);
  }
}

const LATER = 'data-later';
const FILLED = 'data-filled';
const BUSY = 'aria-busy';
/** What is known already: it does not wait for the rest of its place. */
const NOW = 'data-now';

function isLater(element: Element): boolean {
  return element.hasAttribute(LATER);
}

function patchNode(shown: ChildNode, want: ChildNode): void {
  if (shown instanceof Element && want instanceof Element) {
    if (isLater(want) && shown.hasAttribute(FILLED)) {
      shown.setAttribute(BUSY, 'true');
      for (const now of [...want.children].filter((child) => child.hasAttribute(NOW))) {
        const old = [...shown.children].find((child) => keyOf(child) === keyOf(now));
        if (old !== undefined) patchNode(old, now);
      }
      return;
    }
    patchAttributes(shown, want);
    patchChildren(shown, want);
  } else if (shown.nodeValue !== want.nodeValue) shown.nodeValue = want.nodeValue;
}

function patchAttributes(shown: Element, want: Element): void {
  for (const { name } of [...shown.attributes]) {
    // Whether a list is folded open is up to the reader.
    if (!want.hasAttribute(name) && !(name === 'open' && shown instanceof HTMLDetailsElement)) shown.removeAttribute(name);
  }
  for (const { name, value } of want.attributes) if (shown.getAttribute(name) !== value) shown.setAttribute(name, value);
}

function isAlike(a: ChildNode, b: ChildNode): boolean {
  return a.nodeType === b.nodeType && a.nodeName === b.nodeName;
}

/** Only a child without a key may become another one without a key. */
function unkeyed(node: ChildNode | null): ChildNode | null {
  return node !== null && keyOf(node) === undefined ? node : null;
}

function keyOf(node: Node): string | undefined {
  return node instanceof Element ? (node.getAttribute('data-key') ?? undefined) : undefined;
}
