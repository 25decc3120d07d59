import type { Component } from './components.js';

const LINE = '-'.repeat(78);

/** What has to be said of other people's work in a package: whose, under which licence, and its text word for word. */
export function noticesOf(product: string, components: readonly Component[]): string {
  const head = components.length === 0 ? `${product} holds nothing of other people's packages.` : `${product} holds parts of these packages. Their licences ask that these texts are passed on with them.`;
  const list = components.map(({ name, version, licence }) => `  ${name} ${version} (${licence})`);
  const texts = components.map(({ name, version, texts }) => [LINE, `${name} ${version}`, '', ...texts.flatMap((text) => [text, ''])].join('\n'));
  return [head, '', ...list, '', ...texts].join('\n');
}
