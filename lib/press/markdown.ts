/**
 * Markdown of notebook cells as HTML: formulas as MathML (no fonts to load), headings with ids, in
 * the workbook one level deeper than written, because the page has the only first-level heading.
 *
 * @module
 */
import katex from "katex";
import { Marked, type TokenizerAndRendererExtension } from "marked";

/** A heading met on the way, for the table of contents. */
export interface Heading {
  /** level in the page, 1 to 6 */
  readonly level: number;
  /** id in the page */
  readonly id: string;
  /** its text as HTML */
  readonly html: string;
}

/** A formula that cannot be set. */
export interface UnreadFormula {
  /** what stands between its dollar signs */
  readonly formula: string;
  /** what is wrong with it */
  readonly why: string;
}

/** Size to which a formula may set its parts, in em: a rule of a kilometre covers the page. */
const MOST_SIZE = 50;

/** A formula as MathML; one that cannot be read is shown as it was written, and told. */
function rendered(
  formula: string,
  displayMode: boolean,
  onUnread: (unread: UnreadFormula) => void,
): string {
  try {
    // spaces and apostrophes as they are written after cleaning
    return katex.renderToString(formula, {
      displayMode,
      output: "mathml",
      throwOnError: true,
      strict: "ignore",
      maxSize: MOST_SIZE,
    }).replaceAll(/<mspace([^>]*)\/>/g, "<mspace$1></mspace>").replaceAll("&#x27;", "&#39;");
  } catch (error) {
    const why = error instanceof RangeError
      ? "it is nested too deeply"
      : (error as Error).message.replace("KaTeX parse error: ", "");
    onUnread({ formula, why });
    const mark = displayMode ? "$$" : "$";
    return `<code>${escapeHtml(`${mark}${formula}${mark}`)}</code>`;
  }
}

/** Formulas between dollar signs, inline or on lines of their own. */
function formulas(onUnread: (unread: UnreadFormula) => void): TokenizerAndRendererExtension[] {
  const display = /^\$\$\s*([\s\S]+?)\s*\$\$(?:\n|$)/;
  const inline = /^\$(?!\s)((?:\\.|[^\\$\n])+?)(?<!\s)\$(?!\d)/;
  const render = (text: string, displayMode: boolean) => rendered(text, displayMode, onUnread);
  return [
    {
      name: "displayFormula",
      level: "block",
      start: (source) => source.indexOf("$$"),
      tokenizer: (source) => {
        const found = display.exec(source);
        if (found === null) return undefined;
        return { type: "displayFormula", raw: found[0], text: found[1]! };
      },
      renderer: (token) => `<div class="formula">${render(token.text, true)}</div>\n`,
    },
    {
      name: "inlineFormula",
      level: "inline",
      start: (source) => source.indexOf("$"),
      tokenizer: (source) => {
        const found = inline.exec(source);
        if (found === null) return undefined;
        return { type: "inlineFormula", raw: found[0], text: found[1]! };
      },
      renderer: (token) => render(token.text, false),
    },
  ];
}

/**
 * Makes a renderer for the text cells of one notebook.
 *
 * @param prefix start of every heading's id, so that notebooks on one page do not collide
 * @param onHeading called for each heading, in order
 * @param onUnread called for each formula that cannot be read
 * @param deeper levels by which a heading lies deeper than written
 */
export function markdownRenderer(
  prefix: string,
  onHeading: (heading: Heading) => void = () => {},
  onUnread: (unread: UnreadFormula) => void = () => {},
  deeper = 1,
): (markdown: string) => string {
  const used = new Map<string, number>();
  const start = slugOf(prefix);
  const marked = new Marked({ gfm: true, async: false });
  marked.use({
    extensions: formulas(onUnread),
    renderer: {
      heading(token) {
        const html = this.parser.parseInline(token.tokens);
        const level = Math.min(6, token.depth + deeper);
        const slug = `${start}-${slugOf(token.text)}`;
        const times = used.get(slug) ?? 0;
        used.set(slug, times + 1);
        const id = times === 0 ? slug : `${slug}-${times + 1}`;
        onHeading({ level, id, html });
        return `<h${level} id="${id}">${html}</h${level}>\n`;
      },
    },
  });
  return (markdown) => marked.parse(markdown) as string;
}

/** A text as part of an id: words in small letters with hyphens between. */
export function slugOf(text: string): string {
  const words = text.toLowerCase().normalize("NFKD").match(/[a-z0-9]+/g);
  return words?.join("-") ?? "part";
}

/** Text made safe inside HTML, attributes included. */
export function escapeHtml(text: string): string {
  const codes: Record<string, string> = {
    "&": "&amp;",
    "<": "&lt;",
    ">": "&gt;",
    '"': "&quot;",
    "'": "&#39;",
  };
  return text.replace(/[&<>"']/g, (sign) => codes[sign]!);
}
