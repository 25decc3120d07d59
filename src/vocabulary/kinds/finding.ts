import { defineKind, led, ledMany } from '../kind.js';
import { choice, listOf, nameOf, readings, runSuchAs, textSuchAs, wordsSuchAs } from '../values.js';
import { note } from './note.js';

export const finding = defineKind({
  word: 'finding',
  says: 'Something that was seen, heard or measured. Work names the findings it rests on with because.',
  example: 'finding low-four "Cylinder 4 low, air heard in the exhaust"\n  compression 171 168 173 38 169 170 psi\n  leakage 8 9 7 82 9 8 %\n  seen by borescope\n  noise "puffing at idle"\n  code P0304',
  name: 'optional',
  title: 'required',
  titleSays: 'what was found, in words the customer understands',
  fields: {
    seenBy: led('seen by', wordsSuchAs('borescope', '"the driver, on the road"'), 'Who saw it or what it was seen with.'),
    compression: led('compression', readings('compression readings', ['pressure'], '171 168 173 170 psi'), 'The pressure that each cylinder reached: one reading for each.'),
    leakage: led('leakage', readings('leakage readings', ['percent'], '8 9 7 82 %'), 'How much of the air each cylinder lost: one reading for each.'),
    debris: led('debris', choice('what was in the oil', { none: 'Nothing was found.', magnetic: 'Iron or steel.', 'non-magnetic': 'Bearing metal, aluminium, plastic or sealant.' }), 'What was in the pan or the filter: none, magnetic or non-magnetic.'),
    fluid: led('fluid', wordsSuchAs('"brown, with flakes in it"'), 'The state of a fluid.'),
    noise: led('noise', wordsSuchAs('"puffing at idle"'), 'What was heard, and when.'),
    codes: ledMany('code', listOf(runSuchAs('P0304')), 'Trouble codes read from the vehicle.'),
    pictures: ledMany('picture', listOf(textSuchAs('pictures/cylinder-4.jpg')), 'Picture files that show it, such as a borescope frame: PNG, JPEG or WebP, below the folder of the workspace.'),
    rulesOut: ledMany('rules out', listOf(nameOf(['option', 'labour'])), 'Options or work that this finding speaks against. An option is then weighed like the others, and is no choice: it has no rank, and is quoted only where it is named.'),
  },
  children: [note],
});
