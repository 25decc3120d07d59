import { createRequire } from 'node:module';
import { getLanguageService, type JSONDocument } from 'vscode-json-languageservice';
import { TextDocument } from 'vscode-languageserver-textdocument';

// Loaded as CommonJS: the packages' module builds don't resolve under Node alone.
const require = createRequire(import.meta.url);

/** A general-purpose language service on the same records: it only validates, and adds nothing up. */
export interface Peer {
  readonly label: string;
  readonly textOf: (records: unknown) => string;
  /** Checks a text; what is returned is what an editor would keep of it. */
  readonly check: (text: string) => Promise<unknown>;
  /** What is offered at an offset of a text that was not seen before. */
  readonly complete: (text: string, offset: number) => Promise<number>;
}

let texts = 0;

/** A document that no service has seen, and keeps nothing of. */
function fresh(language: string, text: string): TextDocument {
  texts++;
  return TextDocument.create(`file:///bench-${texts}.${language}`, language, texts, text);
}

/** The records as JSON, checked for shape against the schema that the vocabulary emits. */
export function jsonService(schema: object): Peer {
  const service = getLanguageService({});
  service.configure({ validate: true, allowComments: false, schemas: [{ uri: 'urn:bench', fileMatch: ['*'], schema }] });
  const opened = (text: string): [TextDocument, JSONDocument] => {
    const document = fresh('json', text);
    return [document, service.parseJSONDocument(document)];
  };
  return {
    label: 'JSON service',
    textOf: (records) => JSON.stringify(records, null, 1),
    check: async (text) => {
      const [document, parsed] = opened(text);
      return [document, parsed, await service.doValidation(document, parsed)];
    },
    complete: async (text, offset) => {
      const [document, parsed] = opened(text);
      return (await service.doComplete(document, document.positionAt(offset), parsed))?.items.length ?? 0;
    },
  };
}

interface YamlService {
  readonly configure: (settings: object) => void;
  readonly doValidation: (document: TextDocument, kubernetes: boolean) => Promise<unknown>;
  readonly doComplete: (document: TextDocument, position: object, kubernetes: boolean) => Promise<{ readonly items: readonly unknown[] }>;
}

/** The records as YAML, checked for syntax alone. */
export function yamlService(): Peer {
  const { stringify } = require('yaml') as { stringify: (value: unknown) => string };
  const yaml = require('yaml-language-server') as { getLanguageService: (options: object) => YamlService };
  const service = yaml.getLanguageService({ schemaRequestService: () => Promise.resolve('{}'), workspaceContext: { resolveRelativePath: (path: string) => path } });
  service.configure({ validate: true, completion: true, schemas: [], customTags: [] });
  const opened = (text: string) => fresh('yaml', text);
  return {
    label: 'YAML service',
    textOf: stringify,
    check: async (text) => {
      const document = opened(text);
      return [document, await service.doValidation(document, false)];
    },
    complete: async (text, offset) => {
      const document = opened(text);
      return (await service.doComplete(document, document.positionAt(offset), false)).items.length;
    },
  };
}
