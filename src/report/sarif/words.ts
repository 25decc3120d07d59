import { plain } from '../plain.js';

/**
 * Words of ours, or of a file, as a SARIF message (3.11). Braces stand for places to fill in and are doubled (3.11.5);
 * `[words](address)` would become a link that a viewer follows (3.11.6), so the two are kept apart: a file must not put
 * links into a build server's pages.
 */
export function messageText(text: string): string {
  return plain(text).replace(/[{}]/g, '$&$&').replace(/\](?=\()/g, '] ');
}

/**
 * A slash path from the source root as a URI reference (RFC 3986, 3.10.3): letters beyond ASCII and all that has a
 * meaning in a URI percent-encoded. Half a character, which some file systems allow, becomes U+FFFD.
 */
export function uriReference(path: string): string {
  return path.split('/').map((step) => encodeURIComponent(step.replace(/\p{Surrogate}/gu, '\ufffd'))).join('/');
}
