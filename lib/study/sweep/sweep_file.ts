/**
 * Reads a sweep file: which keys of a study take which values; long because each fault of a section is
 * named where the section is read.
 *
 * @module
 */
import { type ChapterName, inFileOrder, InputError, InputErrors } from "../../basics/mod.ts";
import { type Kind, parseQuantity } from "../../units/mod.ts";
import { SOBOL_COLUMNS } from "../../worth/mod.ts";
import { CHAPTERS } from "../chapters.ts";
import { nearestKey } from "../file/faults.ts";
import { fieldSchema } from "../file/field_schema.ts";
import { fieldRow } from "../file/fields.ts";
import { STUDY_KEYS, type StudyKey, studyKey } from "../file/schema.ts";
import { type KeyPath, parseYaml, type YamlSource } from "../file/yaml_source.ts";
import { axisLength } from "./rows.ts";
import type { Axis, SweepForm, SweepPlan, SweptKey, SweptValue } from "./types.ts";

const FORMS: readonly SweepForm[] = ["grid", "zip", "sample"];
const POINTS = ["sobol", "latin"] as const;
const TOP_KEYS = ["form", "rows", "points", "seed", "chapters", "keys"];
const RANGE_KEYS = ["from", "to", "steps"];
/** After so many faults the rest of a list is not looked at. */
const MOST_FAULTS = 100;
/** Rows beyond this are hardly meant. */
const MOST_ROWS = 1e7;

/** Collects what is wrong, each with its line. */
interface Reader {
  readonly source: YamlSource;
  readonly faults: InputError[];
}

function fault({ source, faults }: Reader, path: KeyPath, message: string): undefined {
  faults.push(new InputError(message, source.locate(path)));
  return undefined;
}

/** "did you mean …", or what is known. */
function hint(word: string, known: readonly string[]): string {
  const near = nearestKey(word, known);
  return near === undefined ? `known: ${known.join(", ")}` : `did you mean "${near}"?`;
}

/**
 * Reads a sweep file.
 *
 * @param text YAML
 * @param file name for messages
 * @throws {InputErrors} with every fault, each with file and line
 */
export function readSweep(text: string, file: string): SweepPlan {
  const reader: Reader = { source: parseYaml(text, file), faults: [] };
  const { data } = reader.source;
  if (!isSection(data)) {
    throw new InputErrors([
      new InputError(`Cannot use the sweep file: expected keys such as ${TOP_KEYS.join(", ")}`, {
        file,
        line: 1,
      }),
    ]);
  }
  refuseUnknown(reader, [], data, TOP_KEYS, "the sweep file");
  const form = wordOf(reader, "form", data.form, FORMS) ?? "grid";
  const points = wordOf(reader, "points", data.points, POINTS) ?? "sobol";
  const seed = wholeOf(reader, ["seed"], data.seed, 0) ?? 1;
  const chapters = chaptersOf(reader, data.chapters);
  const keys = keysOf(reader, data.keys, form);
  const rows = rowCount(reader, form, data.rows, keys);
  if (form !== "sample") {
    for (const key of ["points", "seed"]) {
      if (data[key] !== undefined) fault(reader, [key], `"${key}" belongs to the form sample`);
    }
  } else if (points === "sobol" && keys.length > SOBOL_COLUMNS) {
    fault(
      reader,
      ["keys"],
      `Sobol' points are known for ${SOBOL_COLUMNS} keys at most; found ${keys.length}: use points: latin`,
    );
  }
  const { faults } = reader;
  if (faults.length > 0) throw inFileOrder(faults);
  return { form, rows, points, seed, chapters, keys };
}

function isSection(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function refuseUnknown(
  reader: Reader,
  path: KeyPath,
  section: object,
  known: readonly string[],
  where: string,
): void {
  for (const key of Object.keys(section)) {
    if (known.includes(key)) continue;
    reader.faults.push(
      new InputError(
        `Unknown key "${key}" in ${where}: ${hint(key, known)}`,
        reader.source.locateKey(path, key),
      ),
    );
  }
}

function wordOf<const W extends string>(
  reader: Reader,
  key: string,
  value: unknown,
  words: readonly W[],
): W | undefined {
  if (value === undefined) return undefined;
  const word = words.find((one) => one === String(value).trim().toLowerCase());
  return word ??
    fault(reader, [key], `"${key}" must be one of ${words.join(", ")}; found ${inWords(value)}`);
}

/** A value of the file as a person may recognise it. */
function inWords(value: unknown): string {
  return typeof value === "object" ? JSON.stringify(value) : String(value);
}

function wholeOf(
  reader: Reader,
  path: KeyPath,
  value: unknown,
  least: number,
): number | undefined {
  if (value === undefined) return undefined;
  const number = Number(value);
  return Number.isSafeInteger(number) && number >= least && number <= MOST_ROWS ? number : fault(
    reader,
    path,
    `"${path.join(".")}" must be a whole number from ${least} to ${MOST_ROWS}; found ${
      inWords(value)
    }`,
  );
}

function chaptersOf(reader: Reader, value: unknown): readonly ChapterName[] {
  const all = CHAPTERS.map(({ name }) => name);
  if (value === undefined) return all;
  if (!Array.isArray(value) || value.length === 0) {
    fault(reader, ["chapters"], `"chapters" must be a list of ${all.join(", ")}`);
    return all;
  }
  value.forEach((name, place) => {
    if (all.some((one) => one === name)) return;
    fault(
      reader,
      ["chapters", place],
      `Unknown chapter "${inWords(name)}": ${hint(inWords(name), all)}`,
    );
  });
  return all.filter((name) => value.includes(name));
}

function keysOf(reader: Reader, value: unknown, form: SweepForm): readonly SweptKey[] {
  if (!isSection(value) || Object.keys(value).length === 0) {
    fault(
      reader,
      ["keys"],
      '"keys" must name keys of the study with their values, such as ' +
        "{soil.moisture: [15 %, 25 %]}",
    );
    return [];
  }
  return Object.entries(value).flatMap(([key, values]) => {
    const outer = Object.keys(value).find((other) => key.startsWith(`${other}.`));
    if (outer !== undefined) {
      fault(
        reader,
        ["keys", key],
        `"${key}" lies within "${outer}", which is changed too: keep one`,
      );
    }
    const found = studyKey(key);
    if (found === undefined) {
      reader.faults.push(
        new InputError(
          `Unknown key of the study "${key}": ${keyHint(key)}`,
          reader.source.locateKey(["keys"], key),
        ),
      );
      return [];
    }
    const axis = axisOf(reader, { key, found, values, form });
    return axis === undefined
      ? []
      : [{ key, path: found.path, kind: commonKind(found, axis), axis }];
  });
}

function keyHint(key: string): string {
  const known = [...STUDY_KEYS].flatMap(([section, keys]) =>
    section === "" ? [] : keys.map((name) => `${section}.${name}`)
  );
  const near = nearestKey(key, known);
  if (near !== undefined) return `did you mean "${near}"?`;
  const [section] = key.split(".");
  const keys = STUDY_KEYS.get(section!);
  return keys === undefined
    ? "write it with its section, such as soil.moisture; docs/keys.md lists them all"
    : `known keys of "${section}": ${keys.join(", ")}`;
}

interface AxisGiven {
  readonly key: string;
  readonly found: StudyKey;
  readonly values: unknown;
  readonly form: SweepForm;
}

function axisOf(reader: Reader, given: AxisGiven): Axis | undefined {
  const { key, found, values } = given;
  const path = ["keys", key];
  if (Array.isArray(values)) return listOf(reader, given, values);
  if (!isSection(values)) {
    return fault(
      reader,
      path,
      `"${key}" must be a list of values, or a range such as {from: 15 %, to: 35 %, steps: 5}`,
    );
  }
  refuseUnknown(reader, path, values, RANGE_KEYS, `the range of "${key}"`);
  const { form } = found.field;
  if (!["quantity", "quantityOr", "quantityOrId", "byMonth", "whole"].includes(form)) {
    return fault(reader, path, `"${key}" holds no quantity: give a list of values, not a range`);
  }
  return rangeOf(reader, given, values);
}

function listOf(
  reader: Reader,
  { key, found }: AxisGiven,
  values: readonly unknown[],
): Axis | undefined {
  if (values.length === 0) return fault(reader, ["keys", key], `"${key}" has no values`);
  const sound = values.map((value, place) =>
    reader.faults.length < MOST_FAULTS &&
    isSound(reader, { key, found, value, path: ["keys", key, place] })
  );
  return sound.every(Boolean)
    ? { form: "list", values: values as readonly SweptValue[] }
    : undefined;
}

function rangeOf(
  reader: Reader,
  { key, found, form }: AxisGiven,
  { from, to, steps }: Readonly<Record<string, unknown>>,
): Axis | undefined {
  const path = ["keys", key];
  for (const [name, value] of [["from", from], ["to", to]] as const) {
    if (value === undefined) return fault(reader, path, `The range of "${key}" lacks "${name}"`);
  }
  const ends = [["from", from], ["to", to]] as const;
  const sound = ends.map(([name, value]) =>
    isSound(reader, { key, found, value, path: [...path, name] })
  );
  if (!sound.every(Boolean)) return undefined;
  const kind = fieldRow(found.row).kind as Kind;
  const [low, high] = ends.map(([, value]) => asNumber(value, kind)) as [
    number | undefined,
    number | undefined,
  ];
  if (low === undefined || high === undefined) {
    return fault(reader, path, `The range of "${key}" must go from one quantity to another`);
  }
  const whole = found.field.form === "whole";
  if (form === "sample") {
    if (steps !== undefined) {
      fault(reader, [...path, "steps"], `"steps" has no use in samples: "rows" says how many`);
    }
    return {
      form: "range",
      low: Math.min(low, high),
      high: Math.max(low, high),
      steps: undefined,
      kind,
      whole,
    };
  }
  if (steps === undefined) {
    return fault(
      reader,
      path,
      `The range of "${key}" lacks "steps": how many values, both ends included`,
    );
  }
  const count = wholeOf(reader, [...path, "steps"], steps, 2);
  if (count === undefined) return undefined;
  if (whole && !Number.isInteger((high - low) / (count - 1))) {
    return fault(
      reader,
      [...path, "steps"],
      `"${key}" takes whole numbers, and ${count} steps from ${low} to ${high} are none`,
    );
  }
  return { form: "range", low, high, steps: count, kind, whole: false };
}

function asNumber(value: unknown, kind: Kind): number | undefined {
  try {
    return parseQuantity(value as string | number, kind);
  } catch {
    return undefined;
  }
}

/** Asks the schema of the study whether the key may have the value. */
function isSound(
  reader: Reader,
  { key, found, value, path }: {
    readonly key: string;
    readonly found: StudyKey;
    readonly value: unknown;
    readonly path: KeyPath;
  },
): boolean {
  const result = fieldSchema(found.row, found.field).safeParse(value);
  for (const { message } of result.error?.issues ?? []) {
    fault(reader, path, message.startsWith('"') ? message : `Cannot use "${key}": ${message}`);
  }
  return result.success;
}

/** The kind, where every value is a quantity. */
function commonKind({ row, field }: StudyKey, axis: Axis): Kind | null {
  if (axis.form === "range") return axis.kind;
  if (field.form === "list" || field.form === "part") return null;
  const { kind } = fieldRow(row);
  if (kind === "text") return null;
  return axis.values.every((value) => asNumber(value, kind) !== undefined) ? kind : null;
}

function rowCount(
  reader: Reader,
  form: SweepForm,
  given: unknown,
  keys: readonly SweptKey[],
): number {
  if (form === "sample") {
    if (given === undefined) fault(reader, [], 'Samples need "rows": how many');
    return wholeOf(reader, ["rows"], given, 1) ?? 1;
  }
  if (given !== undefined) {
    fault(reader, ["rows"], '"rows" belongs to the form sample: elsewhere the values say how many');
  }
  const lengths = keys.map(({ axis }) => axisLength(axis));
  if (form === "grid") {
    const rows = lengths.reduce((product, length) => product * length, 1);
    if (rows > MOST_ROWS) {
      fault(
        reader,
        ["keys"],
        `${lengths.join(" x ")} values make ${rows} rows, more than ${MOST_ROWS}`,
      );
    }
    return rows;
  }
  for (const { key, axis } of keys) {
    if (axisLength(axis) === lengths[0]) continue;
    fault(
      reader,
      ["keys", key],
      `"${key}" has ${axisLength(axis)} values and "${keys[0]!.key}" ${lengths[0]}: the form zip ` +
        "takes them one after the other and needs as many of each",
    );
  }
  return lengths[0] ?? 0;
}
