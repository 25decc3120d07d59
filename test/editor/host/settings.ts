// User settings that make the editor behave the same on every run: nothing asks, suggests, updates or moves by itself.
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';

export type Theme =
  'Default Light Modern' | 'Default Dark Modern' | 'Default High Contrast' | 'Default High Contrast Light';

export type Settings = Record<string, unknown>;

const calm: Settings = {
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.enableExperiments': false,
  'workbench.reduceMotion': 'on',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'chat.disableAIFeatures': true,
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'files.autoSave': 'off', // the browser's default differs from the desktop's
  'git.openRepositoryInParentFolders': 'never',
  'telemetry.telemetryLevel': 'off',
  'update.showReleaseNotes': false,
  'window.autoDetectColorScheme': false,
  'window.autoDetectHighContrast': false,
  'editor.cursorBlinking': 'solid', // screenshots of the same state are the same picture
};

const fileIn = (userDataDir: string): string => path.join(userDataDir, 'User', 'settings.json');

async function existing(file: string): Promise<Settings> {
  try {
    return JSON.parse(await readFile(file, 'utf8')) as Settings;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return calm;
    throw error;
  }
}

/** Adds to the user's settings; the first call also writes the calm ones. */
export async function writeSettings(userDataDir: string, settings: Settings): Promise<void> {
  const file = fileIn(userDataDir);
  const merged = { ...(await existing(file)), ...settings };
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, `${JSON.stringify(merged, null, 2)}\n`);
}

/** Unsaved text of an earlier session would come back in the next one, whatever the settings say. */
export async function forgetUnsaved(userDataDir: string): Promise<void> {
  await rm(path.join(userDataDir, 'User', 'Backups'), { recursive: true, force: true });
}
