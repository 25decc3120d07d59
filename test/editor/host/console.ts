// What the page and the extension host wrote to the console, without what is known not to be ours.
import type { Page } from 'playwright-core';

export interface ConsoleEntry {
  readonly type: string;
  readonly text: string;
}

// Each entry is named on purpose: an unknown error or policy violation has to stay visible.
const noise: readonly RegExp[] = [
  // The server's own page asks for files that its npm package doesn't carry.
  /status of 404 \(Not Found\) \(http:\/\/127\.0\.0\.1:\d+\/(?:_static\/|update\/check\)|stable-\w+\/static\/node_modules\/vsda\/)/,
  /^A bad HTTP response code \(404\) was received when fetching the script\.$/,
  /\[Service Worker\] registration TypeError: .*_static\/out\/browser\/serviceWorker\.js/,
  // Built-in parts that are still at work when a window is loaded anew.
  /\[lifecycle\] Long running operations during shutdown are unsupported in the web/,
  /Unable to write file 'vscode-log:[^']*' \(Error: IndexedDB database '[\w-]+' is closed/,
  // Built-in account features, which have no network here.
  /Timed out waiting for authentication provider 'github' to register/,
];

const isNoise = (text: string): boolean => noise.some((pattern) => pattern.test(text));

export interface ConsoleLog {
  all(): readonly ConsoleEntry[];
  /** Errors, warnings about the content policy and uncaught exceptions that aren't known noise. */
  problems(): readonly ConsoleEntry[];
}

export function collectConsole(page: Page): ConsoleLog {
  const entries: ConsoleEntry[] = [];
  page.on('console', (message) => {
    const where = message.location().url;
    entries.push({ type: message.type(), text: where === '' ? message.text() : `${message.text()} (${where})` });
  });
  page.on('pageerror', (error) => entries.push({ type: 'error', text: error.stack ?? error.message }));
  const matters = (entry: ConsoleEntry): boolean =>
    entry.type === 'error' || /content security policy/i.test(entry.text);
  return {
    all: () => entries,
    problems: () => entries.filter((entry) => matters(entry) && !isNoise(entry.text)),
  };
}
