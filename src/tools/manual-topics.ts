import { NOTHING, topics, topicWords } from '../vocabulary/index.js';
import { code, fence, plain, table } from './markdown.js';

/** The chapter on what lines count as, and by which words they are recognized. */
export function topicsChapter(): string {
  return [
    '## Trade topics',
    'Some checks ask whether the work is complete: a head that comes off wants a new gasket, a used engine wants a look before it goes in. For that a line counts as one or more of the topics below.',
    `Where a line says nothing, the words of its title and of its name decide. A phrase stands for its words in this order, in small or capital letters, with or without an s; ${code('…')} stands for any words between. Words such as “the” are passed over. What speaks against a topic weighs more.`,
    `Write ${code('counts as')} and the topics on the line, or below it, and its words decide nothing any more; ${code(`counts as ${NOTHING}`)} switches them off.`,
    fence('part set "What the head takes" 214.00 new counts as head-gasket, stem-seals\npart mounts "Used engine: its mounts" 30.00 used counts as nothing'),
    table(['Topic', 'What it is', 'On', 'Known by', 'Not by'], Object.entries(topics).map(([topic, { says, on, known, not = [] }]) => [code(topic), plain(says), on.join(', '), known.map(code).join(', '), not.map(code).join(', ')])),
    `${code(NOTHING)}: ${plain(topicWords[NOTHING])}`,
  ].join('\n\n');
}
