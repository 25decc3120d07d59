import { html, type Html } from './page/html.js';

/** A style with its hash (CSP Level 3: base64 of the SHA-256 of its bytes), which alone lets it in. */
export interface LockedStyle {
  readonly css: string;
  readonly sha256: string;
}

/**
 * A page that needs nothing but itself: no script, nothing from elsewhere, the one style it was made with, and
 * pictures that are written into it. Whatever else came in by mistake would not be loaded.
 */
export function standalone(language: string, title: string, { css, sha256 }: LockedStyle, body: Html): string {
  const policy = `default-src 'none'; img-src data:; style-src 'sha256-${sha256}'; base-uri 'none'; form-action 'none'`;
  return `<!DOCTYPE html>\n${html`<html lang="${language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${raw(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>${raw(css)}</style>
</head>
<body>
${body}
</body>
</html>`.markup}\n`;
}

/** The product's own text, with no character that could end an attribute or a style. */
function raw(text: string): Html {
  if (/["<]/.test(text)) throw new Error('Own text of a page must not hold quotes or markup.');
  return { markup: text };
}
