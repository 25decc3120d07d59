import { parseArgs } from 'node:util';
import { visible } from '../report/index.js';
import { closest } from '../vocabulary/index.js';
import { createLanguageService } from '../service/index.js';
import { changes } from './changes.js';
import { check } from './check.js';
import { closingFile } from './closing.js';
import { exportFile } from './export.js';
import { filesFrom, InputError } from './files.js';
import { gitCommand } from './git/command.js';
import { help } from './help.js';
import { history } from './history.js';
import { list } from './list.js';
import { quoteFile } from './quote.js';
import { quoteStageFile } from './quote-stage.js';
import { quoteSupplementFile } from './quote-supplement.js';
import { printRecords } from './records.js';
import type { Terminal } from './terminal.js';
import { dayFrom } from './today.js';
import { weighFile } from './weigh.js';

export type ExitCode = 0 | 1 | 2;

const COMMANDS = ['check', 'weigh', 'quote', 'export', 'closing', 'history', 'list', 'records', 'changes', 'git'] as const;

/** Options that belong to some commands only. */
const BELONGS: Readonly<Record<string, readonly string[]>> = { json: ['check', 'weigh', 'export', 'closing', 'history', 'list', 'records', 'changes'], explain: ['weigh'], option: ['quote'], stage: ['quote'], supplement: ['quote'], as: ['check', 'quote', 'export', 'changes'], output: ['check', 'quote', 'export', 'changes'], since: ['changes', 'quote'], today: ['list', 'weigh', 'export'] };

/** Runs one command line. Never throws; whatever goes wrong is said in a sentence. */
export function run(args: readonly string[], version: string, given: Terminal): ExitCode {
  // Names of files, and what a system says of them, may hold anything; no colour goes there.
  const terminal: Terminal = { ...given, err: (text) => given.err(visible(text)) };
  try {
    return runCommand(args, version, terminal);
  } catch (error) {
    if (error instanceof InputError) return wrong(error.message, terminal);
    if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS')) return wrong(error.message.split('. ')[0] ?? error.message, terminal);
    if (error instanceof Error && 'syscall' in error) return wrong(`The file could not be read: ${error.message}`, terminal);
    throw error;
  }
}

function runCommand(args: readonly string[], version: string, given: Terminal): ExitCode {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: { json: { type: 'boolean' }, explain: { type: 'string' }, option: { type: 'string' }, stage: { type: 'string' }, supplement: { type: 'boolean' }, as: { type: 'string' }, output: { type: 'string', short: 'o' }, since: { type: 'string' }, today: { type: 'string' }, help: { type: 'boolean', short: 'h' }, version: { type: 'boolean' } },
  });
  const [command, ...names] = positionals;
  const terminal = values.today === undefined ? given : { ...given, today: dayFrom(values.today) };
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
  if (names.length === 0 && !['git', 'list', 'history'].includes(command)) return wrong(`${command} needs a file, or - for standard input.`, terminal);
  if (command === 'changes' && names.length > 2) return wrong('changes takes one version, or two: OLD NEW.', terminal);
  if (!['check', 'changes', 'git', 'list', 'history'].includes(command) && names.length > 1) return wrong(`${command} takes one file.`, terminal);
  for (const [option, commands] of Object.entries(BELONGS)) {
    if (option in values && !commands.includes(command)) return wrong(`--${option} belongs to ${commands.join(', ').replace(/, ([^,]+)$/, ' and $1')}.`, terminal);
  }

  if (values.json === true && values.as !== undefined && values.as !== 'json') return wrong(`--json and --as ${values.as} ask for two forms at once.`, terminal);

  if (values.json === true && values.explain !== undefined) return wrong('--explain answers in text; leave out --json.', terminal);

  if (command === 'changes') return changes(names, { as: values.json === true ? 'json' : values.as, output: values.output, since: values.since, version }, terminal) ? 0 : 1;
  if (command === 'git') return gitCommand(names, version, terminal) ? 0 : 1;

  const files = filesFrom(terminal.cwd, terminal.stdin);
  const service = createLanguageService(files.host);
  const json = values.json === true;
  const name = names[0] as string;
  if (command === 'check') return check(names, { as: json ? 'json' : values.as, output: values.output, version }, service, files, terminal) ? 0 : 1;
  if (command === 'weigh') return weighFile(name, { json, explain: values.explain }, service, files, terminal) ? 0 : 1;
  if (command === 'quote' && values.stage !== undefined) {
    if (values.option !== undefined) return wrong('--stage quotes a stage and --option an option: one at a time.', terminal);
    if (values.supplement === true) return wrong('--supplement adds to an option that was authorised; it goes without --stage.', terminal);
    return quoteStageFile(name, values.stage, { as: values.as, output: values.output }, service, files, terminal) ? 0 : 1;
  }
  if (command === 'quote' && values.supplement === true) return quoteSupplementFile(name, { option: values.option, as: values.as, output: values.output, since: values.since }, service, files, terminal) ? 0 : 1;
  if (command === 'quote' && values.since !== undefined) return wrong('--since goes with --supplement: a quote is of the file as it is.', terminal);
  if (command === 'quote') return quoteFile(name, { option: values.option, as: values.as, output: values.output }, service, files, terminal) ? 0 : 1;
  if (command === 'export') return exportFile(name, { as: json ? 'json' : values.as, output: values.output }, service, files, terminal) ? 0 : 1;
  if (command === 'list') return list(names, json, service, files, terminal) ? 0 : 1;
  if (command === 'history') return history(names, json, files, terminal) ? 0 : 1;
  if (command === 'closing') return closingFile(name, json, service, files, terminal) ? 0 : 1;
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
