/** A sweep of what a study does not know: the usual ranges about its own values. @module */
import { readDataTable } from "../../basics/mod.ts";
import { formatQuantity, type Kind, parseQuantity } from "../../units/mod.ts";
import { fieldRow } from "../file/fields.ts";
import type { Study } from "../types.ts";
import table from "../../../data/studies/doubt.csv" with { type: "text" };

/** Rows that a sweep of doubts has unless told otherwise. */
export const DOUBT_ROWS = 64;
/** Chapters whose figures it asks for: those that need no other measure on the house. */
const CHAPTERS = ["house", "fan", "store"];
/** Steps into which a range is cut where a value by month is scaled. */
const STEPS = 9;

/** How far a value of a study may be off. */
interface DoubtRow {
  readonly key: string;
  /** what low and high do to the value */
  readonly change: "times" | "plus";
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

const ROWS: readonly DoubtRow[] = readDataTable(
  table,
  "data/studies/doubt.csv",
  ["key", "change", "low", "high", "source"],
).map((row): DoubtRow => {
  const key = row.text("key");
  const change = row.text("change") === "plus" ? "plus" : "times";
  const kind = change === "plus" ? fieldRow(key).kind as Kind : "number";
  const end = (name: string) => parseQuantity(row.text(name), kind);
  return { key, change, low: end("low"), high: end("high"), source: row.text("source") };
});

/** A value of the study by its dotted key; undefined where its section is none. */
function valueOf(study: Study, key: string): unknown {
  return key.split(".").reduce<unknown>(
    (section, name) =>
      typeof section === "object" && section !== null
        ? (section as Readonly<Record<string, unknown>>)[name]
        : undefined,
    study,
  );
}

function changed({ change }: DoubtRow, value: number, by: number): number {
  return change === "plus" ? value + by : value * by;
}

/** The values of a key as a sweep file writes them; null where the study's value is no quantity. */
function rangeText(study: Study, row: DoubtRow): string | null {
  const value = valueOf(study, row.key);
  const { kind, least, most } = fieldRow(row.key);
  const limits = [least, most].map((text) => parseQuantity(text, kind as Kind));
  const kept = (one: number, by: number) =>
    Math.min(limits[1]!, Math.max(limits[0]!, changed(row, one, by)));
  const written = (one: number) => formatQuantity(one, kind as Kind, "SI", 4);
  if (Array.isArray(value)) {
    const steps = Array.from(
      { length: STEPS },
      (_, step) => row.low + (row.high - row.low) * step / (STEPS - 1),
    );
    const list = steps.map((by) =>
      `    - [${value.map((one: number) => written(kept(one, by))).join(", ")}]`
    );
    return `\n${list.join("\n")}`;
  }
  if (typeof value !== "number" || !Number.isFinite(value)) return null;
  const [low, high] = [kept(value, row.low), kept(value, row.high)];
  return low < high ? ` { from: ${written(low)}, to: ${written(high)} }` : null;
}

/**
 * Text of a sweep file that samples the usual doubts about a study's own values.
 *
 * @param study checked study
 * @param rows count of samples
 * @returns a sweep file; every key has where its range comes from beside it
 */
export function doubtSweepText(study: Study, rows: number = DOUBT_ROWS): string {
  const keys = ROWS.flatMap((row) => {
    const range = rangeText(study, row);
    return range === null ? [] : [`  # ${row.source}\n  ${row.key}:${range}`];
  });
  return `# What ${study.heading.name} does not know: usual ranges about its own values. Change them to what
# you know of your site, and run the sweep again into another folder.
form: sample
rows: ${rows}
points: ${(rows & (rows - 1)) === 0 ? "sobol" : "latin"}
seed: 1
chapters: [${CHAPTERS.join(", ")}]
keys:
${keys.join("\n")}
`;
}
