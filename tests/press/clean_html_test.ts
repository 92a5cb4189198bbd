import { assert, assertEquals, assertStringIncludes } from "@std/assert";
import fc from "fast-check";
import katex from "katex";
import { listNotebooks } from "winterground/commands/notebook_files.ts";
import { cleanHtml } from "winterground/press/clean_html.ts";
import { markdownRenderer } from "winterground/press/markdown.ts";
import { type MediaBundle, parseNotebook, renderWorkbook } from "winterground/press/mod.ts";
import { pageFaults } from "./page_faults.ts";
import { tinyNotebook } from "./tiny.ts";

/** What runs, loads, sends, redirects or covers the page. */
const HOSTILE: readonly string[] = [
  "<script>alert(1)</script>",
  "<ScRiPt src=https://example.org/x.js></sCrIpT>",
  "<img src=x onerror=alert(1)>",
  '<img src="data:image/svg+xml;base64,PHN2Zy8+" onload="alert(1)">',
  '<img src="data:text/html;base64,PHN2Zy8+">',
  '<p ONCLICK="alert(1)">word</p>',
  "<details open ontoggle=alert(1)>",
  '<a href="javascript:alert(1)">go</a>',
  '<a href="java\tscript:alert(1)">go</a>',
  '<a href=" &#106;avascript:alert(1)">go</a>',
  '<a href="vbscript:x">go</a>',
  '<a href="data:text/html,<script>1</script>">go</a>',
  '<svg><foreignObject><body onload="alert(1)"></body></foreignObject></svg>',
  '<svg><script>alert(1)</script><a xlink:href="javascript:1"><text>x</text></a></svg>',
  "<svg><animate onbegin=alert(1) attributeName=x dur=1s></svg>",
  '<p style="background:url(https://example.org/x)">word</p>',
  '<p style="position:fixed;top:0;left:0;width:100%;height:100%">cover</p>',
  '<p style="width:expression(alert(1))">word</p>',
  "<style>body{display:none}</style>",
  '<style>@import "https://example.org/x.css";</style>',
  '<link rel="stylesheet" href="https://example.org/x.css">',
  '<iframe src="https://example.org"></iframe>',
  '<iframe srcdoc="<script>alert(1)</script>"></iframe>',
  '<meta http-equiv="refresh" content="0;url=https://example.org">',
  '<meta http-equiv="Content-Security-Policy" content="default-src *">',
  '<base href="https://example.org/">',
  '<form action="https://example.org"><input name=x><button>send</button></form>',
  '<object data="https://example.org/x"></object><embed src="https://example.org/x">',
  '<video src="https://example.org/x" poster="https://example.org/y"></video>',
  '<math><annotation-xml encoding="text/html"><script>alert(1)</script></annotation-xml></math>',
  '<math><maction actiontype="statusline" xlink:href="javascript:1">x</maction></math>',
  "<math><mtext><table><mglyph><style><img src=x onerror=alert(1)></style></mglyph></table></mtext>",
  "<noscript><p title='</noscript><img src=x onerror=alert(1)>'></noscript>",
  "<template><script>alert(1)</script></template>",
  "<textarea></textarea><script>alert(1)</script>",
  "<!--><img src=x onerror=alert(1)>-->",
  "<![CDATA[<img src=x onerror=alert(1)>]]>",
  "</div></main></body><script>alert(1)</script>",
  '<img alt="<script>alert(1)</script>" src="https://example.org/x.png" srcset="https://example.org/y 2x">',
  "<plaintext>",
  "<xmp><script>alert(1)</script></xmp>",
];

function page(data: MediaBundle): string {
  const notebook = tinyNotebook("const a = 1;");
  const cell = notebook.cells[0];
  assert(cell?.cell_type === "code");
  cell.outputs = [{ output_type: "display_data", data, metadata: {} }];
  return renderWorkbook({
    title: "t",
    facts: [],
    notices: [],
    sections: [{ name: "a", notebook }],
    provenance: [],
  });
}

Deno.test("nothing that a cell shows can run, load, send or redirect in the report", () => {
  // Property: a list of known attacks, as HTML and as Markdown; each says that it was cut
  for (const attack of HOSTILE) {
    for (const type of ["text/html", "text/markdown"]) {
      const html = page({ [type]: `<p>before</p>\n\n${attack}`, "text/plain": "words" });
      assertEquals(pageFaults(html), [], attack);
      assertStringIncludes(html, "<p>before</p>");
      assertEquals(html.match(/<\/main>/g)?.length, 1, attack);
    }
    if (/^<(?:!|\/div|plaintext)/.test(attack)) continue; // nothing to see is lost with these
    assertStringIncludes(page({ "text/html": attack }), "Something was left out here", attack);
  }
});

Deno.test("attacks within each other, cut short and doubled, leave a clean page too", () => {
  // Property: no mixture makes one that passes
  const piece = fc.oneof(
    fc.constantFrom(...HOSTILE),
    fc.constantFrom(
      "<p>",
      "</p>",
      "<table><tr><td>",
      '<div style="',
      '<img alt="',
      "<math>",
      "<!--",
    ),
    fc.constantFrom('"', "'", ">", "<", "<<", "&lt;script&gt;", "\u0000", "</", "]]>", "-->"),
  );
  const mixture = fc.array(fc.tuple(piece, fc.nat(80)), { minLength: 1, maxLength: 8 })
    .map((parts) => parts.map(([part, cut]) => cut < 20 ? part.slice(0, cut) : part).join(""));
  fc.assert(
    fc.property(mixture, (html) => {
      assertEquals(pageFaults(page({ "text/html": html })), []);
      const once = cleanHtml(html).html;
      assertEquals(cleanHtml(once).html, once);
    }),
    { numRuns: 300, seed: 7 },
  );
});

Deno.test("a picture whose base64 is none is shown as its words", () => {
  // Property: no way out of an attribute
  const html = page({ "image/png": 'AA" onerror="alert(1)', "text/plain": "a photo" });
  assertEquals(pageFaults(html), []);
  assertStringIncludes(html, "<pre>a photo</pre>");
});

Deno.test("what our own helpers, text cells and formulas write passes to the byte", async () => {
  // Property: every committed output and text of the notebooks; formulas of each kind
  let count = 0;
  for (const { name, path } of await listNotebooks()) {
    const markdown = markdownRenderer(name, undefined, ({ formula, why }) => {
      throw new Error(`${name}: ${formula}: ${why}`);
    });
    for (const cell of parseNotebook(await Deno.readTextFile(path), path).cells) {
      const sources = cell.cell_type === "markdown"
        ? [markdown(cell.source)]
        : cell.cell_type === "code"
        ? cell.outputs.flatMap((output) =>
          output.output_type === "display_data" ? [output.data["text/html"]] : []
        )
        : [];
      for (const source of sources) {
        if (source === undefined) continue;
        assertEquals(cleanHtml(String(source), true), { html: source, cut: false });
        count++;
      }
    }
  }
  assert(count > 300, `${count} texts`);
  for (
    const formula of [
      "\\frac{a}{b}\\sqrt[3]{x}",
      "\\begin{aligned}a&=b\\\\c&<d\\end{aligned}",
      "\\text{a b}\\,\\overline{x}\\;\\sum_{i=1}^n \\left(\\frac12\\right)",
      "\\begin{pmatrix}1&2\\\\3&4\\end{pmatrix}\\hat{x}\\mathrm{d}t",
    ]
  ) {
    for (const displayMode of [true, false]) {
      const html = katex.renderToString(formula, { displayMode, output: "mathml" });
      assertEquals(cleanHtml(html), { html, cut: false });
    }
  }
});

Deno.test("plain HTML in another spelling passes without a word", () => {
  // Property: nothing was lost, nothing is said
  for (
    const html of [
      "<p class='note'>it's <br/> \"so\"</p>",
      "<table><tr><td colspan=2>1 &lt; 2</td></tr></table>",
      '<a href="https://example.org/?a=1&amp;b=2">link</a>',
    ]
  ) assertEquals(cleanHtml(html).cut, false, html);
});
