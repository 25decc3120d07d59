import { parseArgs } from 'node:util';
import { visible } from '../report/index.js';
import { closest } from '../vocabulary/index.js';
import { createLanguageService } from '../service/index.js';
import { sayBesideInput } from './beside-input.js';
import { changes } from './changes.js';
import { check } from './check.js';
import { closingFile } from './closing.js';
import { exportFile } from './export.js';
import { filesFrom, InputError, STDIN } from './files.js';
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

const OPTIONS = { json: { type: 'boolean' }, explain: { type: 'string' }, option: { type: 'string' }, stage: { type: 'string' }, supplement: { type: 'boolean' }, as: { type: 'string' }, output: { type: 'string', short: 'o' }, since: { type: 'string' }, today: { type: 'string' }, help: { type: 'boolean', short: 'h' }, version: { type: 'boolean' } } as const;

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
    if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS')) return wrong(misread(error.message.split(/\.\s/)[0] ?? error.message), terminal);
    if (error instanceof Error && 'syscall' in error) return wrong(`The file could not be read: ${error.message}`, terminal);
    throw error;
  }
}

function runCommand(args: readonly string[], version: string, given: Terminal): ExitCode {
  const { values, positionals, tokens } = parseArgs({ args: [...args], allowPositionals: true, tokens: true, options: OPTIONS });
  const [command, ...names] = positionals;
  const slip = names.includes('') ? EMPTY_NAME : slipIn(tokens.flatMap((token) => (token.kind === 'option' && token.value !== undefined ? [{ name: token.name, value: token.value }] : [])));
  if (slip !== undefined) return wrong(slip, given);
  const terminal = values.today === undefined ? given : { ...given, today: dayFrom(values.today) };
  if (values.version === true) return say(`${version}\n`, terminal);
  if (values.help === true || command === undefined || command === 'help') {
    if (values.help === true || command === 'help') return say(help, terminal);
    terminal.err(help);
    return 2;
  }
  if (command === 'lsp') return wrong('lsp takes nothing but --stdio: steelyard lsp --stdio', terminal);
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

  if (command === 'quote' && values.stage !== undefined && values.option !== undefined) return wrong('--stage quotes a stage and --option an option: one at a time.', terminal);
  if (command === 'quote' && values.stage !== undefined && values.supplement === true) return wrong('--supplement adds to an option that was authorised; it goes without --stage.', terminal);
  if (command === 'quote' && values.since !== undefined && values.supplement !== true) return wrong('--since goes with --supplement: a quote is of the file as it is.', terminal);

  const files = filesFrom(terminal.cwd, terminal.stdin);
  const service = createLanguageService(files.host);
  const json = values.json === true;
  const name = names[0] as string;
  const { explain, option, output, since, stage } = values;
  const as = json ? 'json' : values.as;
  const fine = onFiles();
  if (names.includes(STDIN) && !['list', 'history'].includes(command)) sayBesideInput(files.open(STDIN), service, files, terminal);
  return fine ? 0 : 1;

  function onFiles(): boolean {
    switch (command) {
      case 'check': return check(names, { as, output, version }, service, files, terminal);
      case 'weigh': return weighFile(name, { json, explain }, service, files, terminal);
      case 'quote':
        if (stage !== undefined) return quoteStageFile(name, stage, { as, output }, service, files, terminal);
        return values.supplement === true ? quoteSupplementFile(name, { option, as, output, since }, service, files, terminal) : quoteFile(name, { option, as, output }, service, files, terminal);
      case 'export': return exportFile(name, { as, output }, service, files, terminal);
      case 'list': return list(names, json, service, files, terminal);
      case 'history': return history(names, json, files, terminal);
      case 'closing': return closingFile(name, json, service, files, terminal);
      default: return printRecords(files.open(name), service, files, terminal);
    }
  }
}

/** What a variable of a script leaves behind that nobody set; as the name of a file it would be the folder one is in. */
const EMPTY_NAME = 'The name of a file is empty. Name one; a variable that is not set leaves nothing behind.';

/** Why the values of options can't be meant: one is empty, or two of one option say different things. */
function slipIn(given: readonly { readonly name: string; readonly value: string }[]): string | undefined {
  const empty = given.find(({ value }) => value === '');
  if (empty !== undefined) return `--${empty.name} is empty. Write a value behind it, or leave it out.`;
  const twice = given.find(({ name, value }) => given.some((other) => other.name === name && other.value !== value));
  return twice === undefined ? undefined : `--${twice.name} is there more than once, and says different things. Keep one.`;
}

/** What could not be read of the command line, with the option that was meant. */
function misread(message: string): string {
  const written = /^Unknown option '--([^']*)'/.exec(message)?.[1];
  const meant = written === undefined ? undefined : closest(written, Object.keys(OPTIONS));
  return meant === undefined ? message : `${message}. Did you mean --${meant}?`;
}

function say(text: string, terminal: Terminal): ExitCode {
  terminal.out(text);
  return 0;
}

function wrong(message: string, terminal: Terminal): ExitCode {
  terminal.err(`${message}\nSee: steelyard --help\n`);
  return 2;
}
