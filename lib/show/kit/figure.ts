/** A picture with its words and the table behind it, ready to be shown. @module */
import { inert } from "../../basics/mod.ts";
import type * as Plot from "@observablehq/plot";
import { type DataTable, tableHtml, tableText } from "./data_table.ts";
import { escapeMarkup } from "./escape.ts";
import { drawPicture, type LegendEntry } from "./picture.ts";
import { inReadersOrder } from "./reader.ts";

/** What a notebook shows: one entry a MIME type. */
export type DisplayItem = {
  readonly "text/html": string;
  readonly "text/plain": string;
};

/** Words that go with a picture. */
export interface FigureWords {
  /** what the picture shows and what it finds, for those who cannot see it */
  readonly alt: string;
  /** line above the picture */
  readonly title?: string;
  /** line below the picture */
  readonly note?: string;
  /** colours and signs, where there is more than one series */
  readonly legend?: readonly LegendEntry[];
  /** the numbers behind the picture */
  readonly table?: DataTable;
}

/**
 * Draws one plot, or several below each other, and gives the display item: title, picture as an
 * embedded SVG image on white, note, and the table behind it folded away.
 */
export function figure(
  plots: Plot.PlotOptions | readonly Plot.PlotOptions[],
  words: FigureWords,
): DisplayItem {
  const list = Array.isArray(plots) ? plots as readonly Plot.PlotOptions[] : [plots];
  const picture = drawPicture(list as readonly Plot.PlotOptions[], words.legend);
  return pictureItem(picture.svg, words);
}

/** The display item of any finished SVG source. */
export function pictureItem(svg: string, words: FigureWords): DisplayItem {
  const title = words.title === undefined
    ? ""
    : `<figcaption><strong>${escapeMarkup(words.title)}</strong></figcaption>\n`;
  const note = words.note === undefined ? "" : `\n<p class="note">${escapeMarkup(words.note)}</p>`;
  const table = words.table === undefined ? "" : `\n<details><summary>The numbers behind this ` +
    `picture</summary>\n${tableHtml(words.table)}</details>`;
  const image = `<img alt="${escapeMarkup(words.alt)}" src="data:image/svg+xml;base64,${
    base64(inert(inReadersOrder(svg)))
  }" style="max-width:100%">`;
  const plain = [words.title, words.alt, words.note].filter((line) => line !== undefined);
  if (words.table !== undefined && words.table.rows.length <= 40) {
    plain.push(tableText(words.table));
  }
  return {
    "text/html": `<figure style="margin:8px 0">\n${title}${image}${note}${table}\n</figure>`,
    "text/plain": plain.join("\n"),
  };
}

/** Base64 of the UTF-8 bytes of a text. */
export function base64(text: string): string {
  const bytes = new TextEncoder().encode(text);
  let binary = "";
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary);
}
