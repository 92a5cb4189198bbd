/**
 * HTML from a notebook, cut down to what a page of ours may hold: words, tables, lists, links,
 * embedded pictures, formulas.
 *
 * @module
 */
// @ts-types="@types/sanitize-html"
import sanitizeHtml from "sanitize-html";

/** Elements of words, tables, figures and notes. */
const HTML_ELEMENTS = [
  ...["h2", "h3", "h4", "h5", "h6", "p", "div", "span", "br", "hr", "blockquote", "pre"],
  ...["strong", "b", "em", "i", "u", "s", "del", "small", "sub", "sup", "code", "kbd", "abbr"],
  ...["ul", "ol", "li", "dl", "dt", "dd", "a", "img", "figure", "figcaption", "mark"],
  ...["table", "caption", "colgroup", "col", "thead", "tbody", "tfoot", "tr", "th", "td"],
  ...["details", "summary"],
];

/** Elements of formulas; those that carry other languages, actions or links are left out. */
const MATH_ELEMENTS = [
  ...["math", "semantics", "annotation", "mrow", "mi", "mo", "mn", "mtext", "mspace", "ms"],
  ...["mfrac", "msqrt", "mroot", "mstyle", "mpadded", "mphantom", "menclose", "msub", "msup"],
  ...["msubsup", "munder", "mover", "munderover", "mtable", "mtr", "mtd"],
];
const MATH_ATTRIBUTES = [
  ...["accent", "accentunder", "columnalign", "columnlines", "columnspacing", "depth"],
  ...["displaystyle", "encoding", "fence", "height", "linethickness", "lspace", "mathvariant"],
  ...["maxsize", "minsize", "movablelimits", "notation", "rowalign", "rowlines", "rowspacing"],
  ...["rspace", "scriptlevel", "separator", "stretchy", "symmetric", "voffset", "width"],
];

/** Properties whose values are lengths, colours and words. */
const PROPERTIES = new Set([
  ...["color", "background", "background-color", "font-size", "font-weight", "font-style"],
  ...["text-align", "vertical-align", "white-space", "max-width", "width", "height"],
  ...["margin", "margin-top", "margin-right", "margin-bottom", "margin-left"],
  ...["padding", "padding-top", "padding-right", "padding-bottom", "padding-left"],
  ...["border", "border-top", "border-right", "border-bottom", "border-left"],
]);
/** A property and its value: numbers with units, colours, plain words; no address, no function. */
const DECLARATION = /^\s*([a-z-]+)\s*:[-\w.#%, ]{1,100}$/;

/** Pictures within the page. */
const PICTURE = /^data:image\/(?:svg\+xml|png|jpeg);base64,[A-Za-z0-9+/=]+$/;

/** Classes of our own helpers; others could make words look like a part of the page. */
const CLASSES = [
  ...["data", "note", "exercise", "answer", "caution", "notice-list", "light"],
  ...[
    "formula",
    "katex",
    "language-*",
    "wide",
    "drawing",
    "keys",
    "verdict",
    "verdict-word",
    "sign-off",
  ],
];

const OPTIONS: sanitizeHtml.IOptions = {
  allowedTags: [...HTML_ELEMENTS, ...MATH_ELEMENTS],
  allowedAttributes: {
    ...Object.fromEntries(MATH_ELEMENTS.map((name) => [name, MATH_ATTRIBUTES])),
    "*": ["style", "title", "lang", "dir", "role", "aria-label", "aria-hidden"],
    a: ["href"],
    img: ["alt", "src", "width", "height"],
    details: ["open"],
    ol: ["start"],
    col: ["span"],
    th: ["scope", "colspan", "rowspan", "align"],
    td: ["colspan", "rowspan", "align"],
    math: ["display", { name: "xmlns", values: ["http://www.w3.org/1998/Math/MathML"] }],
  },
  allowedClasses: { "*": CLASSES },
  allowedSchemes: ["https", "http", "mailto"],
  allowedSchemesByTag: { img: ["data"] },
  allowProtocolRelative: false,
  nonTextTags: ["script", "style", "textarea", "option", "noscript", "template", "title", "svg"],
  parseStyleAttributes: false, // checked below
  transformTags: { "*": (tagName, attribs) => ({ tagName, attribs: withStyle(attribs) }) },
  exclusiveFilter: ({ tag, attribs }) => tag === "img" && !PICTURE.test(attribs.src ?? ""),
  textFilter: (text) => text.replaceAll('"', "&quot;"),
};

/** Everything that is in a text, written as `OPTIONS` would write it. */
const ALL: sanitizeHtml.IOptions = {
  allowedTags: false,
  allowedAttributes: false,
  allowVulnerableTags: true,
  allowedSchemesAppliedToAttributes: [],
  parseStyleAttributes: false,
  ...(OPTIONS.textFilter === undefined ? {} : { textFilter: OPTIONS.textFilter }),
};

function withStyle(attributes: sanitizeHtml.Attributes): sanitizeHtml.Attributes {
  const { style } = attributes;
  if (style === undefined) return attributes;
  const kept = style.split(";").filter((part) => PROPERTIES.has(DECLARATION.exec(part)?.[1] ?? ""));
  return { ...attributes, style: kept.join(";") };
}

/** What is left of a text, and whether anything was taken away. */
export interface CleanHtml {
  /** the text, cut down */
  readonly html: string;
  /** true where an element, an attribute or an address was left out */
  readonly cut: boolean;
}

/**
 * Cuts HTML down to elements, attributes and addresses that can do nothing but be seen. What our own
 * display helpers and the formulas write comes out as it went in, to the byte.
 *
 * @param html fragment of a page
 * @param ids whether headings keep their ids
 */
export function cleanHtml(html: string, ids = false): CleanHtml {
  const headings = ["h2", "h3", "h4", "h5", "h6"].map((name) => [name, ["id"]]);
  const clean = written(html, ids ? withAttributes(Object.fromEntries(headings)) : OPTIONS);
  return { html: clean, cut: clean !== html && clean !== written(html, ALL) };
}

function withAttributes(more: Readonly<Record<string, string[]>>): sanitizeHtml.IOptions {
  return { ...OPTIONS, allowedAttributes: { ...OPTIONS.allowedAttributes || {}, ...more } };
}

/** Void elements as the sanitizer writes them; in what it writes no text holds "<". */
const VOID = /<(br|hr|img|col)((?: [\w-]+(?:="[^"<>]*")?)*) \/>/g;

/** As the sanitizer writes it, with apostrophes and void elements in our own spelling. */
function written(html: string, options: sanitizeHtml.IOptions): string {
  return sanitizeHtml(html, options).replaceAll("'", "&#39;").replace(VOID, "<$1$2>");
}
