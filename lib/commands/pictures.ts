/**
 * The pictures of the README: taken from the committed outputs of the notebooks.
 *
 * @module
 */
import { join } from "node:path";
import { parseHTML } from "linkedom";
import { readDataTable } from "../basics/mod.ts";
import { type Notebook, writeAtomically } from "../press/mod.ts";
import type { OpenNotebook } from "./check_notebooks.ts";
import { CommandFailure, PROJECT_FOLDER } from "./terminal.ts";

const FOLDER = "docs/pictures";
const SVG_DATA = "data:image/svg+xml;base64,";

/** A picture that is kept as a file. */
export interface Picture {
  /** path in the project */
  readonly path: string;
  /** text of the SVG file */
  readonly svg: string;
}

/**
 * Finds the picture with a title among the outputs of a notebook.
 *
 * @returns text of the SVG, or null where no output has that title
 */
function pictureIn(notebook: Notebook, title: string): string | null {
  for (const cell of notebook.cells) {
    if (cell.cell_type !== "code") continue;
    for (const output of cell.outputs) {
      const html = output.output_type === "display_data" ? output.data["text/html"] : undefined;
      const svg = html === undefined ? null : pictureInHtml(asText(html), title);
      if (svg !== null) return svg;
    }
  }
  return null;
}

function asText(value: unknown): string {
  return Array.isArray(value) ? value.join("") : String(value);
}

function pictureInHtml(html: string, title: string): string | null {
  const { document } = parseHTML(`<html><body>${html}</body></html>`);
  for (const figure of document.querySelectorAll("figure")) {
    if (figure.querySelector("figcaption")?.textContent?.trim() !== title) continue;
    const source = figure.querySelector("img")?.getAttribute("src") ?? "";
    if (!source.startsWith(SVG_DATA)) continue;
    const bytes = Uint8Array.from(atob(source.slice(SVG_DATA.length)), (one) => one.charCodeAt(0));
    return new TextDecoder().decode(bytes);
  }
  return null;
}

/** All pictures of the list, as the notebooks show them. */
async function listedPictures(notebooks: readonly OpenNotebook[]): Promise<Picture[]> {
  const list = `${FOLDER}/pictures.csv`;
  const text = await Deno.readTextFile(join(PROJECT_FOLDER, list));
  return readDataTable(text, list, ["file", "notebook", "title"]).map((row) => {
    const name = row.text("notebook");
    const title = row.text("title");
    const notebook = notebooks.find((one) => one.name === name)?.notebook;
    const svg = notebook === undefined ? null : pictureIn(notebook, title);
    if (svg === null) {
      throw new CommandFailure(`${list}: notebook ${name} shows no picture titled "${title}"`);
    }
    return { path: `${FOLDER}/${row.text("file")}`, svg: svg.endsWith("\n") ? svg : `${svg}\n` };
  });
}

/** Writes the pictures of the list. */
export async function writePictures(notebooks: readonly OpenNotebook[]): Promise<void> {
  for (const picture of await listedPictures(notebooks)) {
    await writeAtomically(join(PROJECT_FOLDER, picture.path), picture.svg);
  }
}

/** Says which picture files differ from what the notebooks show. */
export async function pictureFaults(notebooks: readonly OpenNotebook[]): Promise<string[]> {
  const faults: string[] = [];
  for (const picture of await listedPictures(notebooks)) {
    const kept = await Deno.readTextFile(join(PROJECT_FOLDER, picture.path)).catch(() => null);
    if (kept !== picture.svg) {
      faults.push(`${picture.path}: differs from the notebook; run deno task refresh`);
    }
  }
  return faults;
}
