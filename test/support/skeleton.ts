// The shape of a page without its texts: runs in a browser, and is text because this project's types know no DOM.

/**
 * An expression of the tags with the names of their attributes, in order, of an element of the page. A drawing that cuts
 * a text short keeps the whole of it in a title, which is no part of the shape.
 */
export const skeletonOf = (element: string): string => `((root) => [...root.querySelectorAll('*')].filter((one) => !(one.localName === 'title' && one.closest('text') !== null))
  .map((one) => one.localName + ' ' + one.getAttributeNames().sort().join(' ')))(${element})`;

/** An expression of what in an element would run, load, lead away or change the whole page; nothing of it should be there. */
export const dangersIn = (element: string): string => `((root) => [...root.querySelectorAll('*')].flatMap((one) => [
  ...(/^(script|iframe|object|embed|link|base|form|meta|frame|a|math|audio|video|foreignobject)$/i.test(one.localName) ? [one.outerHTML.slice(0, 120)] : []),
  ...one.getAttributeNames().filter((name) => /^on|^href$|^srcdoc$|^style$|^xlink|^formaction$/i.test(name) || (name === 'src' && !/^data:image\\//.test(one.getAttribute('src')))).map((name) => one.localName + ' ' + name + '=' + one.getAttribute(name).slice(0, 80)),
]))(${element})`;
