/** Values that the schema of the study file allows, key by key. @module */
import fc from "fast-check";
import type { FieldForm } from "winterground/basics/fields.ts";
import { fieldKind, fieldRow } from "winterground/study/file/fields.ts";
import { studyKey } from "winterground/study/file/schema.ts";
import { kindOf, parseQuantity } from "winterground/units/mod.ts";

/** How far values go: within the usual range, or to the limits. */
export type Reach = "usual" | "limits";

/** What may stand in a study file. */
export type Plain = string | number | readonly Plain[] | { readonly [key: string]: Plain };

/** Ways in which a key of a form may be written, other than as a quantity. */
const WRITTEN: Readonly<Record<string, readonly string[]>> = {
  "house.curtain.clock": ["none", "17:00 to 8:00", "16:30 to 9:15"],
  "house.heatSeason": ["all year", "1 Mar to 30 Nov", "never"],
  "store.fanSeason": ["all year", "15 Aug to 30 Apr", "never"],
  "measured.holdOut": ["never", "1 Mar to 14 Mar"],
  "measured.fanOff": ["never", "3 Feb to 16 Feb"],
  "store.chargeSeason": ["all year", "15 Aug to 30 Apr", "1 May to 30 Sep"],
};

/**
 * Values of a key: from its row of data/studies/fields.csv, its form and its data table.
 *
 * @param key dotted path; the entry of a list is the first
 * @param reach how far numbers go
 */
export function legalValue(key: string, reach: Reach): fc.Arbitrary<Plain> {
  const field = studyKey(key.replace(/^(soil\.layers|place\.horizon)\.(?!1\.)/, "$1.1."))?.field;
  if (field === undefined) throw new Error(`no section knows "${key}"`);
  return valueOf(key, field, reach);
}

function valueOf(key: string, field: FieldForm, reach: Reach): fc.Arbitrary<Plain> {
  switch (field.form) {
    case "quantity":
      return quantityText(key, reach);
    case "whole":
      return wholeNumber(key, reach);
    case "quantityOr":
      return fc.oneof({ weight: 4, arbitrary: quantityText(key, reach) }, fc.constant(field.word));
    case "quantityOrId":
      return fc.oneof(
        { weight: 3, arbitrary: quantityText(key, reach) },
        fc.constantFrom(...knownIds(field.find), ...field.words),
      );
    case "byMonth":
      return fc.oneof(
        quantityText(key, reach),
        fc.array(quantityText(key, reach), { minLength: 12, maxLength: 12 }),
      );
    case "choice":
      return fc.constantFrom(...field.words);
    case "id":
      return fc.constantFrom(...knownIds(field.find));
    case "yesNo":
      return fc.constantFrom("yes", "no");
    case "timeZone":
      return fc.integer({ min: -12, max: 14 });
    case "written":
      return fc.constantFrom(...WRITTEN[key]!);
    case "text":
      return fc.string({ minLength: 1, maxLength: 40 }).filter((text) => text.trim() !== "");
    case "list":
    case "part":
      throw new Error(`"${key}" has keys of its own`);
  }
}

/** Ids of a data table, from what its finder says where it finds nothing. */
function knownIds(find: (id: string) => unknown): readonly string[] {
  try {
    find("no-such-id");
  } catch (error) {
    return /known ones are (.*)$/.exec((error as Error).message)![1]!.split(", ");
  }
  throw new Error("a finder found nothing and said nothing");
}

/** Least and most of a key in SI. */
function ends(key: string, reach: Reach): readonly [number, number] {
  const row = fieldRow(key);
  const kind = fieldKind(key);
  const end = (usual: string, hard: string) =>
    parseQuantity(reach === "usual" && usual !== "" ? usual : hard, kind);
  return [end(row.usualLeast, row.least), end(row.usualMost, row.most)];
}

/** Between two ends, evenly or by orders of magnitude, and the ends themselves. */
export function between(low: number, high: number): fc.Arbitrary<number> {
  const even = fc.integer({ min: 0, max: 1e6 }).map((parts) => parts / 1e6);
  const rounded = (value: number) => Math.min(high, Math.max(low, Number(value.toPrecision(6))));
  const ranges = [
    { weight: 6, arbitrary: even.map((share) => rounded(low + share * (high - low))) },
    { weight: 1, arbitrary: fc.constantFrom(low, high) },
  ];
  if (low >= 0 && high > 0) {
    const from = low > 0 ? low : high / 1000;
    const arbitrary = even.map((share) => rounded(from * (high / from) ** share));
    ranges.push({ weight: 5, arbitrary });
  }
  return fc.oneof(...ranges);
}

/** A number in SI as the study file writes it. */
export function written(key: string, value: number): Plain {
  const { si } = kindOf(fieldKind(key));
  return si === "" ? value : `${value} ${si}`;
}

function quantityText(key: string, reach: Reach): fc.Arbitrary<Plain> {
  return between(...ends(key, reach)).map((value) => written(key, value));
}

function wholeNumber(key: string, reach: Reach): fc.Arbitrary<number> {
  const [low, high] = ends(key, reach);
  return between(low, high).map((value) => Math.round(value));
}
