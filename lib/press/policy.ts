/**
 * What a page of ours may do, as a Content-Security-Policy: show itself and its embedded pictures. It
 * loads nothing, sends nothing, and runs nothing but the one program that it may hold.
 *
 * Source: W3C, "Content Security Policy Level 3" [csp3-web].
 *
 * @module
 */
import { createHash } from "node:crypto";

/**
 * The policy of a page with one style sheet.
 *
 * @param style text of its style element, to the byte
 * @param script text of its one program, to the byte; none where it has none
 */
export function contentPolicy(style: string, script?: string): string {
  const hash = hashOf(style);
  return [
    "default-src 'none'",
    ...(script === undefined ? [] : [`script-src 'sha256-${hashOf(script)}'`]),
    "img-src data:",
    // where a browser does not know the two below, it goes by this
    "style-src 'unsafe-inline'",
    `style-src-elem 'sha256-${hash}'`,
    "style-src-attr 'unsafe-inline'", // widths and colours of our own tables and cards
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}

function hashOf(text: string): string {
  return createHash("sha256").update(text).digest("base64");
}

/** The element that puts a policy into a page; must come before all that it governs. */
export function policyElement(style: string, script?: string): string {
  const content = contentPolicy(style, script).replaceAll("&", "&amp;").replaceAll('"', "&quot;");
  return `<meta http-equiv="Content-Security-Policy" content="${content}">\n` +
    '<meta name="referrer" content="no-referrer">';
}
