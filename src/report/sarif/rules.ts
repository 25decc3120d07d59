import type { Message, Severity } from '../../language/index.js';
import { escaped } from '../quote/markdown-form.js';
import type { SarifDescriptor, SarifLevel } from './types.js';
import { messageText } from './words.js';

/** A rule as a log describes it. */
export interface SarifRule {
  readonly id: string;
  readonly title: string;
  readonly severity: Severity;
  readonly tags: readonly string[];
  /** The section about it in the manual, which comes with the tool; undefined where there is none. */
  readonly manual: string | undefined;
  /** What is said about its example, or about all that it finds. */
  readonly says: Message | undefined;
  readonly example: string | undefined;
}

const levels: Readonly<Record<Severity, SarifLevel>> = { error: 'error', warning: 'warning', advice: 'note' };

export function levelOf(severity: Severity): SarifLevel {
  return levels[severity];
}

/** Some examples take hundreds of lines to go wrong; these are not shown. */
const MOST_LINES = 24;

/**
 * What a rule is about (3.49). There is no `helpUri`: it would have to be an absolute address (3.49.12), and the manual
 * is a file; `help` is for that case (3.49.13), and the property `manual` says which section.
 */
export function descriptor({ id, title, severity, tags, manual, says, example }: SarifRule): SarifDescriptor {
  const heading = /[.!?]$/.test(title) ? title : `${title}.`;
  const about = says === undefined ? [] : [says.why, says.instead].filter((part) => part !== '');
  const see = manual === undefined ? [] : [`Manual: ${manual}`];
  return {
    id,
    shortDescription: { text: messageText(heading) },
    fullDescription: { text: messageText([heading, ...about].join(' ')) },
    help: {
      text: messageText([heading, ...about, ...see].join(' ')),
      markdown: [`**${escaped(heading)}**`, ...(says === undefined ? [] : [says.what, ...about]).filter((part) => part !== '').map(escaped), ...fenced(example), ...see.map(escaped)]
        .map((paragraph) => paragraph.split('\n').map(messageText).join('\n')).join('\n\n'),
    },
    defaultConfiguration: { level: levelOf(severity) },
    properties: manual === undefined ? { tags } : { tags, manual },
  };
}

function fenced(example: string | undefined): string[] {
  const lines = example?.trimEnd().split('\n') ?? [];
  return lines.length === 0 || lines.length > MOST_LINES ? [] : ['For example:', `\`\`\`\n${lines.join('\n')}\n\`\`\``];
}
