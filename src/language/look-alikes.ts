/** Quotes that word processors and keyboards of other languages set where a title opens, with what may then close it. */
const closers: Readonly<Record<string, string>> = { '“': '”“', '”': '”“', '„': '”“', '‟': '”“', '«': '»', '»': '«', '‘': '’‘', '‹': '›', '＂': '＂' };

/** Whether this opens what was meant as a title. */
export function opensTitle(code: number): boolean {
  return code > 126 && Object.hasOwn(closers, String.fromCharCode(code));
}

/** Whether this closes a title that the other opened; the plain quote closes any. */
export function closesTitle(open: string, close: string): boolean {
  return close === '"' || closers[open]?.includes(close) === true;
}

/** What the usual look-alikes stand for. Fullwidth forms are folded by offset. */
const plain: Readonly<Record<string, string>> = {
  '“': '"', '”': '"', '„': '"', '«': '"', '»': '"', '‟': '"',
  '–': '-', '—': '-', '‐': '-', '‑': '-', '−': '-', '⁄': '/', '∕': '/', '٫': '.', '‚': ',',
  ...pairs('аеорсхуіѕјһктмнвԁԛԝүАВЕКМНОРСТХУІЅЈҺҮ', 'aeopcxyisjhktmhbdqwyABEKMHOPCTXYISJHY'),
  ...pairs('οναικρτΑΒΕΖΗΙΚΜΝΟΡΤΥΧ', 'ovaikptABEZHIKMNOPTYX'),
};

function pairs(strange: string, twins: string): Record<string, string> {
  return Object.fromEntries([...strange].map((one, i) => [one, twins[i] as string]));
}

/** The same run in plain characters, or undefined where any character has no plain twin. */
export function plainForm(run: string): string | undefined {
  if (run.length > 1 && opensTitle(run.charCodeAt(0)) && closesTitle(run[0] as string, run[run.length - 1] as string)) return `"${run.slice(1, -1).replace(/["\\]/g, '\\$&')}"`;
  let out = '';
  for (const character of run) {
    const code = character.codePointAt(0) ?? 0;
    if (code >= 32 && code < 127) out += character;
    else if (code >= 0xff01 && code <= 0xff5e) out += String.fromCharCode(code - 0xfee0);
    else if (hidden.test(character)) continue;
    else if (isSpaceLike(code)) out += ' ';
    else {
      const twin = plain[character];
      if (twin === undefined) return undefined;
      out += twin;
    }
  }
  return out;
}

/** Spaces that are not the plain one: no-break, narrow, wide and so on. */
export function isSpaceLike(code: number): boolean {
  return code === 0xa0 || code === 0x1680 || (code >= 0x2000 && code <= 0x200a) || code === 0x202f || code === 0x205f || code === 0x3000;
}

/**
 * What nobody sees, wherever it stands: control characters, marks that turn the reading order round (UAX #9), and
 * characters that the Unicode Standard says to show as nothing (Default_Ignorable_Code_Point). Left out are variation
 * selectors, which choose how the character before them looks, and of the controls the tab and the line feed.
 */
export const hidden = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\u3164\ufeff\uffa0\ufff0-\ufffb\u{1bca0}-\u{1bca3}\u{1d173}-\u{1d17a}\u{e0000}-\u{e00ff}\u{e01f0}-\u{e0fff}]/u;
