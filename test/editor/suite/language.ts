// Runs inside the extension host: every feature of the language, asked for as the editor asks for it.
import { runCases } from './cases.js';
import { active } from './language-kit.js';
import { nameCases } from './language-names.js';
import { shownCases } from './language-shown.js';
import { textCases } from './language-text.js';

export async function run(): Promise<void> {
  await active();
  const { passed, failed } = await runCases('in host', [...nameCases, ...textCases, ...shownCases], (line) => console.log(line));
  console.log(`counted ${passed} ${failed}`);
}
