/**
 * Drawings and tables for the site as one page of exact sheets: printed at full size it is to scale.
 *
 * @module
 */
import { inert } from "../basics/mod.ts";
import { documentStart } from "./document.ts";
import { escapeHtml } from "./markdown.ts";
import { type PageSection, pageSection } from "./page.ts";
import frames from "./frames.css" with { type: "text" };
import look from "./pack.css" with { type: "text" };

/** What a pack is made of. */
export interface PackInput {
  /** heading of the page */
  readonly title: string;
  /** who, where, when: one line below the heading */
  readonly facts: readonly string[];
  /** drawings, each a whole sheet of the paper */
  readonly sheets: readonly { readonly title: string; readonly svg: string }[];
  /** size of a sheet, mm */
  readonly paper: { readonly width: number; readonly height: number };
  /** tables behind the drawings */
  readonly sections: readonly PageSection[];
}

/** Renders the pack as one HTML page that needs no other file and no script. */
export function renderPack(input: PackInput): string {
  const { width, height } = input.paper;
  // a hair less than the page, so that rounding begins no empty one
  const style = `${frames}${look}
@page { size: ${width}mm ${height}mm; margin: 12mm; }
@page sheet { size: ${width}mm ${height}mm; margin: 0; }
.sheet img { width: ${width}mm; height: ${height}mm; }
@media print { .sheet { width: ${width}mm; height: ${height - 0.2}mm; } }
`;
  const title = escapeHtml(input.title);
  return inert(`${documentStart({ title: input.title, style })}<header class="head">
<h1>${title}</h1>
<p class="facts">${input.facts.map(escapeHtml).join(" · ")}</p>
<p class="note">Drawings are to scale when printed at full size, without fitting to the page.</p>
</header>
<main id="content">
${input.sections.map((section) => pageSection(section, "part")).join("\n")}
${input.sheets.map(sheet).join("\n")}
</main>
</body>
</html>
`);
}

function sheet({ title, svg }: PackInput["sheets"][number]): string {
  const bytes = Array.from(new TextEncoder().encode(svg), (byte) => String.fromCharCode(byte));
  return `<div class="sheet" tabindex="0" role="group" aria-label="${
    escapeHtml(title)
  }"><img alt="${escapeHtml(title)}" src="data:image/svg+xml;base64,${
    btoa(bytes.join(""))
  }"></div>`;
}
