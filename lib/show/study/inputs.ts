/** The inputs a chapter used, as the study gives them. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { showNumber } from "../../units/mod.ts";
import type { ChapterResults, Study } from "../../study/mod.ts";
import { type FieldRow, FIELDS, valueAt } from "../../study/file/fields.ts";
import { formatMonthly, formatQuantity } from "../../units/mod.ts";
import type { Column } from "../kit/data_table.ts";
import { readersUnits } from "../kit/reader.ts";
import { type NamedNumber, numbers, table } from "../kit/table.ts";

/** Sections of the study file that chapters read. */
export type InputSection = Exclude<keyof ChapterResults, "climate">;

/** One input line. */
export interface InputRow {
  /** path in the study file */
  readonly key: string;
  /** value in SI with unit */
  readonly si: string;
  /** value in US units */
  readonly us: string;
  /** "given", or the source of the default */
  readonly from: string;
  /** what it is */
  readonly meaning: string;
}

/** The inputs of one section, in the order of the field table. */
export function inputRows(study: Study, section: InputSection): InputRow[] {
  const defaults = new Map(study.defaults.map((taken) => [taken.key, taken.source]));
  return [...FIELDS.values()]
    .filter((row) => row.key.startsWith(`${section}.`))
    .flatMap((row) => {
      const value = valueAt(study, row.key);
      const nested = typeof value === "object" && value !== null && !isMonthly(value);
      if (value === undefined || nested) return [];
      const from = defaults.get(row.key);
      return [{
        key: row.key,
        ...bothSystems(value, row),
        from: from === undefined ? "given" : `default: ${from}`,
        meaning: row.meaning,
      }];
    });
}

function bothSystems(value: unknown, row: FieldRow): { readonly si: string; readonly us: string } {
  if (value === null) return { si: "none", us: "" };
  if (isMonthly(value) && row.kind !== "text") {
    return { si: formatMonthly(value, row.kind), us: "" };
  }
  if (typeof value !== "number" || row.kind === "text") return { si: String(value), us: "" };
  const si = formatQuantity(value, row.kind, "SI");
  const us = formatQuantity(value, row.kind, "US");
  return { si, us: us === si ? "" : us };
}

/** True for twelve values, one a month. */
function isMonthly(value: unknown): value is readonly number[] {
  return Array.isArray(value) && value.length === 12 &&
    value.every((one) => typeof one === "number");
}

/** Table of the inputs of one section, with what was given and what is a default. */
export function inputs(study: Study, section: InputSection): DisplayItem {
  const si: Column<InputRow> = { head: "SI", value: (row) => row.si, right: true };
  const us: Column<InputRow> = { head: "US", value: (row) => row.us, right: true };
  return table(inputRows(study, section), [
    { head: "input", value: (row) => `${row.meaning} (${row.key})` },
    ...(readersUnits() === "US" ? [us, si] : [si, us]),
    { head: "given or default", value: (row) => row.from },
  ]);
}

/** The place and the climate the study runs on. */
export function siteInputs(study: Study): DisplayItem {
  const { place, source, layout } = study.climate;
  const list: NamedNumber[] = [
    { label: "place", value: place.name },
    { label: "latitude", value: `${showNumber(place.latitude, 2)} degrees` },
    { label: "longitude", value: `${showNumber(place.longitude, 2)} degrees` },
    { label: "elevation", value: place.elevation, kind: "length" },
    {
      label: "standard time",
      value: `UTC${place.timeZone < 0 ? "−" : "+"}${Math.abs(place.timeZone)}`,
    },
    { label: "climate", value: source },
    { label: "read as", value: layout },
  ];
  return numbers(list);
}
