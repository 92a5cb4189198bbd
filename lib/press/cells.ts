/**
 * Cells of executed notebooks as HTML: code folded away, outputs in the richest form a page can hold.
 *
 * @module
 */
import { cleanHtml } from "./clean_html.ts";
import { escapeHtml } from "./markdown.ts";
import type { CodeCell, MediaBundle, Output } from "./notebook.ts";

/** The code folded away and its outputs. */
export function renderCode(cell: CodeCell, markdown: (text: string) => string): string {
  const number = cell.execution_count ?? "not run";
  return `<details class="code"><summary>Code ${number}</summary>
<pre><code>${escapeHtml(cell.source)}</code></pre></details>
${cell.outputs.map((output) => renderOutput(output, markdown)).join("\n")}`;
}

/** One output. */
export function renderOutput(output: Output, markdown: (text: string) => string): string {
  switch (output.output_type) {
    case "stream":
      return `<pre class="output ${escapeHtml(output.name)}">${escapeHtml(output.text)}</pre>`;
    case "error":
      return `<pre class="output error">${escapeHtml(`${output.ename}: ${output.evalue}`)}</pre>`;
    default:
      return `<div class="output">${renderBundle(output.data, markdown)}</div>`;
  }
}

/** The richest form this page can hold. */
function renderBundle(data: MediaBundle, markdown: (text: string) => string): string {
  const text = (type: string): string | undefined =>
    typeof data[type] === "string" ? data[type] : undefined;
  const plain = text("text/plain") ?? "";
  const html = text("text/html");
  if (html !== undefined) return cleaned(html);
  const svg = text("image/svg+xml");
  if (svg !== undefined) {
    const bytes = Array.from(new TextEncoder().encode(svg), (byte) => String.fromCharCode(byte));
    return picture("image/svg+xml", btoa(bytes.join("")), plain);
  }
  for (const type of ["image/png", "image/jpeg"]) {
    const content = text(type);
    const base64 = content?.replaceAll(/\s/g, "");
    if (base64 !== undefined && BASE64.test(base64)) return picture(type, base64, plain);
  }
  const source = text("text/markdown");
  if (source !== undefined) return cleaned(markdown(source));
  return `<pre>${escapeHtml(plain)}</pre>`;
}

/** What may stand in the page, and a word where that is not all. */
export function cleaned(source: string, ids = false): string {
  const { html, cut } = cleanHtml(source, ids);
  return cut ? `${html}\n<p class="note">${LEFT_OUT}</p>` : html;
}

const LEFT_OUT =
  "Something was left out here: a report holds words, tables, formulas and embedded pictures, but no " +
  "scripts, frames, forms or files from elsewhere.";

const BASE64 = /^[A-Za-z0-9+/=]*$/;

function picture(type: string, base64: string, alt: string): string {
  return `<img alt="${escapeHtml(alt)}" src="data:${type};base64,${base64}">`;
}
