import * as lsp from 'vscode-languageserver/node.js';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { createLanguageService, ProblemsByFile, type Diagnostic, type Severities } from '../../service/index.js';
import { diagnostic, Positions, type Addresses } from './convert.js';
import { answer, capabilities } from './requests.js';
import { clientOf, severitiesIn, type Client } from './settings.js';
import { keyOf, Workspace } from './workspace.js';

/** `steelyard lsp --stdio`: the language service for any editor that speaks the Language Server Protocol. */
export function serve(input: NodeJS.ReadableStream, output: NodeJS.WritableStream, version: string): void {
  const connection = lsp.createConnection(input, output);
  const documents = new lsp.TextDocuments(TextDocument);
  const workspace = new Workspace(documents);
  const service = createLanguageService(workspace.host);
  let client: Client | undefined;
  const can = (what: (client: Client) => boolean) => client !== undefined && what(client);

  const addresses: Addresses = {
    shown: (key) => workspace.shown(key),
    positions: (key) => {
      const open = workspace.document(key);
      if (open !== undefined) return new Positions(open);
      const text = service.tree(key)?.text;
      return text === undefined ? undefined : new Positions(TextDocument.create(key, 'steelyard', 0, text));
    },
  };

  const problems = new ProblemsByFile();
  const publish = (file: string) => {
    const positions = addresses.positions(file);
    const version = workspace.document(file)?.version;
    const diagnostics = positions === undefined ? [] : problems.in(file).map((one) => diagnostic(one, positions, addresses));
    void connection.sendDiagnostics({ uri: workspace.shown(file), ...(version === undefined ? {} : { version }), diagnostics });
  };
  /** The estimate's own file is published too where nothing is wrong in it: whoever waits for that is told. */
  const put = (key: string, files: ReadonlyMap<string, readonly Diagnostic[]> | undefined) => new Set([key, ...problems.put(key, files)]).forEach(publish);
  const check = (key: string) => put(key, service.allDiagnostics(key));
  const checkAll = () => workspace.openKeys().forEach(check);
  /** What an editor drew in other files may be about a figure that has changed. */
  const refresh = () => {
    if (can(({ refreshes }) => refreshes.hints)) void connection.languages.inlayHint.refresh().catch(() => undefined);
    if (can(({ refreshes }) => refreshes.lenses)) void connection.sendRequest(lsp.CodeLensRefreshRequest.type).catch(() => undefined);
    if (can(({ refreshes }) => refreshes.tokens)) connection.languages.semanticTokens.refresh();
  };
  const checkUsersOf = (changed: string) => {
    const users = workspace.openKeys().filter((key) => key !== changed && service.uses(key).includes(changed));
    users.forEach(check);
    if (users.length > 0) refresh();
  };

  let given: Severities = {};
  /** What came with the start stays, where the settings don't say otherwise. */
  const configure = (settings: unknown) => {
    service.configure({ severities: { ...given, ...severitiesIn(settings) } });
    checkAll();
  };
  const askForSettings = () => void connection.workspace.getConfiguration('steelyard').then(configure, () => undefined);

  connection.onInitialize((params) => {
    client = clientOf(params);
    // Older editors send one root alone.
    workspace.setRoots(params.workspaceFolders?.map(({ uri }) => uri) ?? (params.rootUri === null ? [] : [params.rootUri]));
    given = severitiesIn(params.initializationOptions);
    configure(undefined);
    return { capabilities, serverInfo: { name: 'steelyard', version } };
  });
  connection.onInitialized(() => {
    if (can(({ watches }) => watches)) void connection.client.register(lsp.DidChangeWatchedFilesNotification.type, { watchers: [{ globPattern: '**/*.yard' }] }).catch(() => undefined);
    if (can(({ configuration }) => configuration)) askForSettings();
    if (can(({ folders }) => folders)) connection.workspace.onDidChangeWorkspaceFolders(() => void connection.workspace.getWorkspaceFolders().then((folders) => {
      workspace.setRoots((folders ?? []).map(({ uri }) => uri));
      checkAll();
    }, () => undefined));
  });
  connection.onDidChangeConfiguration(({ settings }) => (can(({ configuration }) => configuration) ? askForSettings() : configure(settings)));

  documents.onDidOpen(({ document }) => {
    if (!can(({ watches }) => watches)) workspace.readAgain();
    workspace.opened(document.uri);
  });
  documents.onDidChangeContent(({ document }) => {
    const key = keyOf(document.uri);
    check(key);
    checkUsersOf(key);
  });
  documents.onDidSave(() => {
    if (can(({ watches }) => watches)) return;
    workspace.readAgain();
    checkAll();
  });
  documents.onDidClose(({ document }) => {
    const key = keyOf(document.uri);
    // Cleared first, under the address that the editor knows.
    put(key, undefined);
    workspace.closed(document.uri);
    service.forget(key);
    checkUsersOf(key);
  });
  connection.onDidChangeWatchedFiles(({ changes }) => changes.forEach(({ uri }) => {
    workspace.changed(uri);
    checkUsersOf(keyOf(uri));
  }));

  answer(connection, service, workspace, addresses, () => client as Client);
  documents.listen(connection);
  connection.listen();
}
