import { createRequire } from 'node:module';
import { getLanguageService } from 'vscode-json-languageservice';
import { TextDocument } from 'vscode-languageserver-textdocument';

// Loaded as CommonJS: the packages' module builds don't resolve under Node alone.
const require = createRequire(import.meta.url);

/** A general-purpose language service on the same records: it only validates, and adds nothing up. */
export interface Peer {
  readonly label: string;
  readonly lines: number;
  readonly validate: (round: number) => Promise<unknown>;
}

/** The records as JSON, checked for shape against the schema that the vocabulary emits. */
export function jsonService(records: unknown, schema: object): Peer {
  const text = JSON.stringify(records, null, 1);
  const service = getLanguageService({});
  service.configure({ validate: true, allowComments: false, schemas: [{ uri: 'urn:bench', fileMatch: ['*'], schema }] });
  return {
    label: 'JSON language service, same records',
    lines: text.split('\n').length,
    validate: async (round) => {
      const document = TextDocument.create('file:///bench.json', 'json', round, `${text}${' '.repeat(round)}`);
      return service.doValidation(document, service.parseJSONDocument(document));
    },
  };
}

/** The records as YAML, checked for syntax alone. */
export function yamlService(records: unknown): Peer {
  const { stringify } = require('yaml') as { stringify: (value: unknown) => string };
  const yaml = require('yaml-language-server') as {
    getLanguageService: (options: object) => { configure: (settings: object) => void; doValidation: (document: TextDocument, kubernetes: boolean) => Promise<unknown> };
  };
  const text = stringify(records);
  const service = yaml.getLanguageService({ schemaRequestService: () => Promise.resolve('{}'), workspaceContext: { resolveRelativePath: (path: string) => path } });
  service.configure({ validate: true, schemas: [], customTags: [] });
  return {
    label: 'YAML language service, same records, syntax only',
    lines: text.split('\n').length,
    validate: async (round) => service.doValidation(TextDocument.create('file:///bench.yaml', 'yaml', round, `${text}# ${round}\n`), false),
  };
}
