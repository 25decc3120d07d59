// The parts of the CycloneDX 1.6 JSON schema (ECMA-424; bom-1.6.schema.json as published by the CycloneDX project) that
// our bills use, word for word but for titles and descriptions. A property that isn't named here is refused, so that a
// new one is looked up first. The whole schema was tried by hand when this was written, and took both bills.
const string = { type: 'string' } as const;
const refType = { type: 'string', minLength: 1 } as const;
const object = (required: readonly string[], properties: object) => ({ type: 'object', required, additionalProperties: false, properties }) as const;
const license = object([], { id: string });
const component = object(['type', 'name'], {
  'type': { enum: ['application', 'framework', 'library', 'container', 'platform', 'operating-system', 'device', 'device-driver', 'firmware', 'file', 'machine-learning-model', 'data', 'cryptographic-asset'] },
  'bom-ref': refType, 'name': string, 'version': { type: 'string', maxLength: 1024 }, 'description': string, 'purl': string,
  'scope': { enum: ['required', 'optional', 'excluded'] },
  'hashes': {
    type: 'array',
    items: object(['alg', 'content'], {
      alg: { enum: ['MD5', 'SHA-1', 'SHA-256', 'SHA-384', 'SHA-512', 'SHA3-256', 'SHA3-384', 'SHA3-512', 'BLAKE2b-256', 'BLAKE2b-384', 'BLAKE2b-512', 'BLAKE3'] },
      content: { type: 'string', pattern: '^([a-fA-F0-9]{32}|[a-fA-F0-9]{40}|[a-fA-F0-9]{64}|[a-fA-F0-9]{96}|[a-fA-F0-9]{128})$' },
    }),
  },
  'licenses': { type: 'array', items: object(['license'], { license }) },
  'properties': { type: 'array', items: object(['name'], { name: string, value: string }) },
});

export const cyclonedx = {
  ...object(['bomFormat', 'specVersion'], {
    $schema: string,
    bomFormat: { enum: ['CycloneDX'] },
    specVersion: { const: '1.6' },
    version: { type: 'integer', minimum: 1 },
    metadata: object([], {
      lifecycles: { type: 'array', items: object(['phase'], { phase: { enum: ['design', 'pre-build', 'build', 'post-build', 'operations', 'discovery', 'decommission'] } }) },
      component,
    }),
    components: { type: 'array', items: component, uniqueItems: true },
    dependencies: { type: 'array', uniqueItems: true, items: object(['ref'], { ref: refType, dependsOn: { type: 'array', uniqueItems: true, items: refType } }) },
  }),
};

/** What the tests read of a bill. */
export interface Bill {
  readonly metadata: { readonly component: { readonly 'bom-ref': string } };
  readonly components: readonly { readonly 'bom-ref': string; readonly name: string; readonly version: string; readonly hashes: readonly { readonly content: string }[]; readonly licenses: readonly { readonly license: { readonly id: string } }[] }[];
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn: readonly string[] }[];
}
