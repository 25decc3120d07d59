// As much of an editor as its adapters need to read files: what stands on its disk is a map, and every call can be made
// to fail or to wait. The real editor is in test/editor; here are faults that it can't be brought to.

type Listener<T> = (event: T) => void;

/** What happens when a file is asked for: nothing, a wait, or a fault. */
export type Happens = (path: string) => void | Promise<void>;

class Emitter<T> {
  private readonly listeners = new Set<Listener<T>>();
  readonly event = (listener: Listener<T>) => {
    this.listeners.add(listener);
    return { dispose: () => void this.listeners.delete(listener) };
  };
  fire(event: T): void {
    for (const one of [...this.listeners]) one(event);
  }
  dispose(): void {
    this.listeners.clear();
  }
}

export interface Address {
  readonly scheme: string;
  readonly path: string;
  readonly fsPath: string;
  readonly toString: () => string;
  readonly with: (changed: { readonly path?: string }) => Address;
}

function address(scheme: string, path: string): Address {
  return { scheme, path, fsPath: path, toString: () => `${scheme}://${path}`, with: ({ path: other = path }) => address(scheme, other) };
}

const Uri = {
  parse: (text: string): Address => address(text.slice(0, text.indexOf(':')), text.replace(/^[a-z-]+:\/\//, '')),
  from: ({ scheme, path }: { readonly scheme: string; readonly path: string }): Address => address(scheme, path),
  joinPath: (uri: Address, ...more: readonly string[]): Address => {
    const steps = uri.path.split('/');
    for (const step of more.join('/').split('/')) {
      if (step === '..') steps.pop();
      else steps.push(step);
    }
    return uri.with({ path: steps.join('/') });
  },
};

/** An editor over a folder `/shop`. */
export function fakeEditor(files: Readonly<Record<string, string | Uint8Array>>) {
  const disk = new Map<string, { bytes: Uint8Array; mtime: number }>();
  let clock = 1;
  const write = (name: string, text: string | Uint8Array): void => void disk.set(`/shop/${name}`, { bytes: typeof text === 'string' ? new TextEncoder().encode(text) : text, mtime: clock++ });
  for (const [name, text] of Object.entries(files)) write(name, text);
  const before: { stat: Happens; readFile: Happens; findFiles: Happens } = { stat: () => undefined, readFile: () => undefined, findFiles: () => undefined };
  const reads: string[] = [];
  const at = ({ path }: Address) => {
    const found = disk.get(path);
    if (found === undefined) throw Object.assign(new Error(`${path} is not there`), { code: 'FileNotFound' });
    return found;
  };
  const none = new Emitter<never>();
  const settings = new Map<string, unknown>();
  const shown: { readonly kind: string; readonly text: string }[] = [];
  const say = (kind: string) => (text: string) => {
    shown.push({ kind, text });
    return Promise.resolve(undefined);
  };
  const vscode = {
    Uri, EventEmitter: Emitter, FileType: { Unknown: 0, File: 1, Directory: 2, SymbolicLink: 64 }, ProgressLocation: { Window: 10 }, TreeItemCollapsibleState: { None: 0, Collapsed: 1, Expanded: 2 }, ViewColumn: { Beside: -2 },
    TreeItem: class { constructor(readonly label: string) {} }, ThemeIcon: class { constructor(readonly id: string) {} },
    workspace: {
      fs: {
        stat: async (uri: Address) => {
          await before.stat(uri.path);
          const { bytes, mtime } = at(uri);
          return { type: 1, size: bytes.length, mtime, ctime: 0 };
        },
        readFile: async (uri: Address) => {
          reads.push(uri.path);
          const { bytes } = at(uri);
          await before.readFile(uri.path);
          return bytes;
        },
      },
      decode: (bytes: Uint8Array) => Promise.resolve(new TextDecoder().decode(bytes)),
      findFiles: async () => {
        await before.findFiles('');
        return [...disk.keys()].filter((one) => one.endsWith('.yard')).map((path) => address('file', path));
      },
      textDocuments: [] as object[], workspaceFolders: [{ uri: address('file', '/shop') }], getWorkspaceFolder: () => ({ uri: address('file', '/shop') }), isTrusted: true,
      onDidOpenTextDocument: none.event, onDidCloseTextDocument: none.event, onDidChangeConfiguration: none.event,
      registerTextDocumentContentProvider: () => ({ dispose: () => undefined }), createFileSystemWatcher: () => ({ onDidCreate: none.event, onDidDelete: none.event, onDidChange: none.event, dispose: () => undefined }),
      getConfiguration: () => ({ get: (name: string, usual: unknown) => settings.get(name) ?? usual }), asRelativePath: (uri: Address) => uri.path.replace('/shop/', ''),
    },
    window: { showInformationMessage: say('information'), showWarningMessage: say('warning'), withProgress: (_: unknown, work: (progress: object) => Promise<void>) => work({ report: () => undefined }) },
    extensions: { getExtension: (): object | undefined => undefined },
  };
  return { vscode, write, remove: (name: string) => void disk.delete(`/shop/${name}`), before, reads, shown, key: (name: string) => `file:///shop/${name}`, emitter: <T>() => new Emitter<T>() };
}

/** Something that is waited for until it is let go on. */
export function gate(): { readonly wait: () => Promise<void>; readonly open: () => void } {
  let open: () => void = () => undefined;
  const opened = new Promise<void>((resolve) => (open = resolve));
  return { wait: () => opened, open: () => open() };
}
