import type { Component } from './components.js';

/** The product itself, as its manifest names it. */
export interface Product {
  readonly name: string;
  readonly version: string;
  readonly license: string;
  readonly description: string;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
}

/**
 * What a package is made of, for machines: a bill of materials in CycloneDX 1.6 (ECMA-424), as JSON. It holds no time
 * and no random number, so that two builds of the same sources say the same.
 */
export function billOf(product: Product, file: string, components: readonly Component[]): string {
  const own = `${product.name}@${product.version}`;
  const asked = { ...product.dependencies, ...product.devDependencies };
  const refs = new Map(components.map((one) => [one.name, purlOf(one)]));
  const bill = {
    $schema: 'http://cyclonedx.org/schema/bom-1.6.schema.json',
    bomFormat: 'CycloneDX',
    specVersion: '1.6',
    version: 1,
    metadata: {
      lifecycles: [{ phase: 'build' }],
      component: { type: 'application', 'bom-ref': own, name: product.name, version: product.version, description: product.description, licenses: licences(product.license), properties: [{ name: 'steelyard:package', value: file }] },
    },
    components: components.map((one) => ({
      type: 'library', 'bom-ref': purlOf(one), name: one.name, version: one.version, scope: 'required',
      hashes: [{ alg: 'SHA-512', content: one.sha512 }],
      licenses: licences(one.licence),
      purl: purlOf(one),
    })),
    // What is bundled is what counts: a package that one of these names, but of which no byte is here, is left out.
    dependencies: [
      { ref: own, dependsOn: components.filter(({ name }) => Object.hasOwn(asked, name)).map(purlOf) },
      ...components.map((one) => ({ ref: purlOf(one), dependsOn: one.needs.flatMap((name) => refs.get(name) ?? []) })),
    ],
  };
  return `${JSON.stringify(bill, undefined, 2)}\n`;
}

const licences = (id: string) => [{ license: { id } }];

/** Package URL (the purl specification), type npm: the sign before a scope is written in percent-encoding. */
function purlOf({ name, version }: Component): string {
  return `pkg:npm/${name.replace(/^@/, '%40')}@${version}`;
}
