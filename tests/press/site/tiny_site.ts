/** A site of three small pages for tests. @module */
import { documentBody, lessonBody, type SiteDraft } from "winterground/press/site/mod.ts";
import type { CodeCell, Notebook } from "winterground/press/mod.ts";

/** A text page. */
export function textPage(name: string, markdown: string, group = "Guides"): SiteDraft {
  return { file: `${name}.html`, source: `docs/${name}.md`, group, ...documentBody(markdown) };
}

/** A cell of code that has shown some HTML. */
export function shown(source: string, html: string): CodeCell {
  return {
    cell_type: "code",
    id: `c${Math.abs(source.length * 31 + html.length)}`,
    metadata: {},
    source,
    execution_count: 1,
    outputs: [{ output_type: "display_data", data: { "text/html": html }, metadata: {} }],
  };
}

/** A notebook of a title, cells of code, and a text that ends it. */
export function notebookOf(cells: readonly CodeCell[], text = "# Frost\n\nHow deep?"): Notebook {
  return {
    nbformat: 4,
    nbformat_minor: 5,
    metadata: {},
    cells: [{ cell_type: "markdown", id: "t", metadata: {}, source: text }, ...cells],
  };
}

/** A lesson without exercises. */
export function lessonPage(name: string, notebook: Notebook): SiteDraft {
  return {
    file: `lesson-${name}.html`,
    source: `notebooks/${name}.ipynb`,
    group: "Lessons",
    ...lessonBody(notebook, () => null),
  };
}
