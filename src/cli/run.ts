import { parseArgs } from 'node:util';
import { closest } from '../vocabulary/index.js';
import { createLanguageService } from '../service/index.js';
import { check } from './check.js';
import { exportFile } from './export.js';
import { filesFrom, InputError } from './files.js';
import { help } from './help.js';
import { quoteFile } from './quote.js';
import { printRecords } from './records.js';
import type { Terminal } from './terminal.js';
import { weighFile } from './weigh.js';

export type ExitCode = 0 | 1 | 2;

const COMMANDS = ['check', 'weigh', 'quote', 'export', 'records'] as const;

/** Options that belong to some commands only. */
const BELONGS: Readonly<Record<string, readonly string[]>> = { explain: ['weigh'], option: ['quote'], as: ['quote', 'export'], output: ['quote', 'export'] };

/** Runs one command line. Never throws; whatever goes wrong is said in a sentence. */
export function run(args: readonly string[], version: string, terminal: Terminal): ExitCode {
  try {
    return runCommand(args, version, terminal);
  } catch (error) {
    if (error instanceof InputError) return wrong(error.message, terminal);
    if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS')) return wrong(error.message.split('. ')[0] ?? error.message, terminal);
    if (error instanceof Error && 'syscall' in error) return wrong(`The file could not be read: ${error.message}`, terminal);
    throw error;
  }
}

function runCommand(args: readonly string[], version: string, terminal: Terminal): ExitCode {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: { json: { type: 'boolean' }, explain: { type: 'string' }, option: { type: 'string' }, as: { type: 'string' }, output: { type: 'string', short: 'o' }, help: { type: 'boolean', short: 'h' }, version: { type: 'boolean' } },
  });
  const [command, ...names] = positionals;
  if (values.version === true) return say(`${version}\n`, terminal);
  if (values.help === true || command === undefined || command === 'help') {
    if (values.help === true || command === 'help') return say(help, terminal);
    terminal.err(help);
    return 2;
  }
  if (!(COMMANDS as readonly string[]).includes(command)) {
    const meant = closest(command, COMMANDS);
    return wrong(`There is no command ${command}.${meant === undefined ? '' : ` Did you mean ${meant}?`}`, terminal);
  }
  if (names.length === 0) return wrong(`${command} needs a file, or - for standard input.`, terminal);
  if (command !== 'check' && names.length > 1) return wrong(`${command} takes one file.`, terminal);
  for (const [option, commands] of Object.entries(BELONGS)) {
    if (option in values && !commands.includes(command)) return wrong(`--${option} belongs to ${commands.join(' and ')}.`, terminal);
  }

  const files = filesFrom(terminal.cwd, terminal.stdin);
  const service = createLanguageService(files.host);
  const json = values.json === true;
  const name = names[0] as string;
  if (command === 'check') return check(names, json, service, files, terminal) ? 0 : 1;
  if (command === 'weigh') return weighFile(name, { json, explain: values.explain }, service, files, terminal) ? 0 : 1;
  if (command === 'quote') return quoteFile(name, { option: values.option, as: values.as, output: values.output }, service, files, terminal) ? 0 : 1;
  if (command === 'export') return exportFile(name, { as: values.as, output: values.output }, service, files, terminal) ? 0 : 1;
  return printRecords(files.open(name), service, files, terminal) ? 0 : 1;
}

function say(text: string, terminal: Terminal): ExitCode {
  terminal.out(text);
  return 0;
}

function wrong(message: string, terminal: Terminal): ExitCode {
  terminal.err(`${message}\nSee: steelyard --help\n`);
  return 2;
}
