// Texts that want to be more than text, and an estimate in which every place for a text holds one of them.

/** What a text in a file can't hold (line ends) is spelled out by its reader. Written from memory of what such texts look like, not taken from a list. */
export const HOSTILE: readonly string[] = [
  // Markup, scripts, event attributes, links that run something.
  '<script>alert(1)</script>',
  '</title></style></head><img src=x onerror=alert(1)>',
  '"><svg onload=alert(1)>',
  "' onmouseover='alert(1)",
  '" autofocus onfocus="alert(1)" x="',
  '<a href="javascript:alert(1)">press</a>',
  '<iframe srcdoc="<script>parent.alert(1)</script>"></iframe>',
  '</main></button></td></tr></table><form action=//example.invalid><input name=a>',
  '<base href="http://example.invalid/"><link rel=stylesheet href=x>',
  '<meta http-equiv="refresh" content="0;url=http://example.invalid">',
  '<math><mtext><style><img src=x onerror=alert(1)></style></mtext></math>',
  '<details open ontoggle=alert(1)>', '<style>*{display:none}</style>',
  '<!-- never closed',
  '&lt;b&gt; &amp; &#x3c; &NewLine;&Tab;&colon;',
  ']]><![CDATA[', '<?xml version="1.0"?>',
  // Template braces and interpolations.
  '{{constructor.constructor("alert(1)")()}}', '${alert(1)} #{1} <%= 1 %>', '`${1}`', '%s %d %n {0}', '$& $1 $$ $`',
  '__proto__', 'constructor', 'toString',
  // Markdown.
  '# A heading',
  '- a list', '+ a list', '1. a list', '1) a list', '=====', '---', '***',
  '[a link](javascript:alert(1))', '![a picture](http://example.invalid/x.png)', '<http://example.invalid>', 'http://example.invalid', 'www.example.invalid', 'someone@example.invalid',
  '| a | cell |', '`code` ``` ~~~', '**bold** _thin_ ~~gone~~', '> quoted', '$x^2$', '[^1]', '\\| \\',
  // What a spreadsheet takes for a formula.
  '=HYPERLINK("http://example.invalid";"x")', '+1+1', '-1+1', '@SUM(1)', '＝1+1', '  =1+1', '\t=1',
  // Long words, many words, wide characters.
  'x'.repeat(300), `${'very '.repeat(60)}long`, '漢'.repeat(120),
  // Both directions of writing, what turns it round, what can't be seen, what can't be printed.
  'עברית ואז 123', 'نص عربي ١٢٣', 'turned \u202e round \u202c', 'isolates \u2067 open', 'zero\u200bwidth\ufeff',
  'bell \u0007 escape \u001b[31m', 'null \u0000 c1 \u009b31m', 'e\u0301\u0301\u0301 marks', '🔧 wrench', 'half \ud83d a pair \udd27',
].map((one) => one.replace(/[\r\n]/g, ' '));

/** The place of a text in the estimate below that is the name of a picture file, and what a path can hold of it. */
export const PICTURE = 10;
export const fileNameOf = (text: string): string => `${text.replace(/[\\/:\t]/g, '')}.png`;

const quoted = (text: string): string => `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;

/**
 * A whole estimate. `textAt` gives the text of each place, counted from 0; the same lines with a harmless one give the
 * shape to compare with.
 */
export function estimateWith(textAt: (place: number) => string): string {
  let place = 0;
  const q = (): string => quoted(textAt(place++));
  return `steelyard 1
shop ${q()}
  address ${q()}
  phone ${q()}
  currency USD
  rate bench ${q()} 100.00 usual  cost 40.00
  tax levy ${q()} 7% on parts, labour
  fee ${q()} 5.00
estimate ${q()}
  written 2026-11-24
  start 2026-11-30
  valid 14 d
vehicle ${q()}
  worth 900.00
  unrepaired 200.00
finding seen ${q()}
  seen by ${q()}
  picture ${quoted(`p/${fileNameOf(textAt(place++))}`)}
access open ${q()}
  remove 1 / 2 / 3 h
  sublet ${q()} 20.00
labour job ${q()} 2 h with open
  because seen
  chance crack ${q()} 10%
    part ${q()} 30.00 used
labour extra ${q()} 4 h
  takes 1 h with open
part unit ${q()} 400.00 rebuilt
  core 50.00 due 30 d
    keeps ${q()} less 5.00
consider extra
inspect look ${q()} 0.5 h
  finds crack 80%  wrongly 8%
coverage ${q()} recall
note ${q()}
option one ${q()}
  do job
  fit unit
  leaves out ${q()}
  harvest ${q()} 10.00
  note ${q()}
  lasts 24 mo
  resale 100.00
option two ${q()}
  do job
`;
}

/** The same text in every place. */
export function estimateOf(text: string): string {
  return estimateWith(() => text);
}
