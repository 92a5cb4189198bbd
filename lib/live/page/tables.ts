/** The tables of a live page and the keys of its pictures, as markup. @module */
import { MONTH_NAMES } from "../../basics/series/calendar.ts";
import type { UnitSystem } from "../../units/quantity.ts";
import type { LivePart, LiveYear, Resolution } from "../types.ts";
import type { KeySign } from "./charts.ts";
import { monthRows } from "./month_rows.ts";
import { changeText, escaped, FIGURE_LINES, figureText, shown } from "./text.ts";

/** What the table of figures compares. */
export interface Compared {
  /** the study as it is, at the same resolution */
  readonly study: LiveYear;
  /** the reader's case as far as it is known; null where nothing is moved */
  readonly own: LivePart | null;
  readonly resolution: Resolution;
  readonly units: UnitSystem;
  /** the reader's own weather; null or absent for that of the study */
  readonly weather?: unknown;
}

/** Figures of the study, of the reader's case, and how far they are apart. */
export function figureTable({ study, own, resolution, units, weather = null }: Compared): string {
  const quick = resolution === "screening" ? ", quick year" : "";
  const plan = `This study${weather === null ? "" : " on your weather"}${quick}`;
  const heads = own === null ? ["Figure", plan] : ["Figure", plan, `Your case${quick}`, "Change"];
  const rows = FIGURE_LINES.map((line) => {
    const planned = study.figures[line.key];
    const number = (value: number | undefined) =>
      `<data value="${value ?? ""}">${escaped(figureText(line, value, units))}</data>`;
    const value = own?.figures[line.key];
    const cells = own === null
      ? [number(planned)]
      : [number(planned), number(value), escaped(changeText(line, value, planned, units))];
    return `<tr><th scope="row">${escaped(line.label)}</th>${
      cells.map((cell) => `<td>${cell}</td>`).join("")
    }</tr>`;
  });
  return `<table><caption>The year that repeats, in numbers</caption><thead><tr>${
    heads.map((head) => `<th scope="col">${head}</th>`).join("")
  }</tr></thead><tbody>${rows.join("")}</tbody></table>`;
}

/** The months behind the pictures. */
export function monthTable(year: LivePart, units: UnitSystem): string {
  const cell = (value: number | undefined, kind: "temperature" | "energy") =>
    `<td>${value === undefined ? "…" : escaped(shown(value, kind, units))}</td>`;
  const rows = monthRows(year).map((row, month) =>
    `<tr><th scope="row">${MONTH_NAMES[month]}</th>` +
    cell(row.outdoors, "temperature") + cell(row.store, "temperature") +
    cell(row.noFan, "temperature") + cell(row.heat, "energy") + cell(row.heatNoFan, "energy") +
    "</tr>"
  );
  return `<table><caption>Coldest hour without a heater, and back-up heat, by month</caption>` +
    `<thead><tr><th scope="col">Month</th><th scope="col">Outdoors</th>` +
    `<th scope="col">With the store</th><th scope="col">Fan always off</th>` +
    `<th scope="col">Back-up heat, with the store</th>` +
    `<th scope="col">Back-up heat, fan always off</th></tr></thead>` +
    `<tbody>${rows.join("")}</tbody></table>`;
}

/** The key of a picture: each sign drawn as in it. */
export function keyMarkup(signs: readonly KeySign[]): string {
  return signs.map(({ label, colour, dash, width }) =>
    `<li><svg aria-hidden="true" width="30" height="10" viewBox="0 0 30 10">` +
    `<path d="M1,5H29" stroke="${colour}" stroke-width="${width}"` +
    (dash === "" ? "" : ` stroke-dasharray="${dash}"`) + `/></svg> ${escaped(label)}</li>`
  ).join("");
}
