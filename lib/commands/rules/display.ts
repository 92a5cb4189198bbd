/**
 * Display code formats what the chapters computed: it takes types, constants and rows of data tables
 * from the rooms below, the formatting of units and drawings, and no function that works anything out.
 *
 * @module
 */
import { posix } from "node:path";
import { CHAPTERS } from "../../study/chapters.ts";
import { modulesIn } from "./import_graph.ts";

/** Rooms whose functions compute. */
const COMPUTING = new Set<string>([
  "basics",
  "air",
  "sun",
  ...CHAPTERS.map(({ name }) => name),
  "measured",
]);
/** Constants and tables, and the look-up of one row. */
const DATA = /^(?:[A-Z][A-Z0-9_]*|find[A-Z]\w*)$/;
/** Functions that only name things or make words fit to be shown, and the fault of a file. */
const NAMING = new Set([
  "InputError",
  "monthOfHour",
  "describeHour",
  "hoursText",
  "inert",
  "wordsCell",
]);
/** What display code may take from a library of sums. */
const SERIES_LIBRARY: Readonly<Record<string, readonly string[]>> = { "d3-array": ["ticks"] };
/** Exercises are textbook cases: their answers are worked out by the library's moist air. */
const EXERCISES = /^show\/\w+\/exercises\.ts$/;

/** An import of values: where from, and which. */
interface ValueImport {
  readonly source: string;
  readonly names: readonly string[];
}

function valueImports(text: string): ValueImport[] {
  return [...text.matchAll(/\bimport\s+(?!type\b)([^;"]*?)\s+from\s*"([^"]+)"/g)].map((match) => ({
    source: match[2]!,
    names: match[1]!.replace(/[{}]/g, "").split(",").map((name) => name.trim())
      .filter((name) => name !== "" && !name.startsWith("type ")),
  }));
}

/**
 * What a module of `lib/show` imports but must not.
 *
 * @param path within the library, such as "show/store/charts.ts"
 * @param text of the module
 * @returns one line a fault
 */
export function displayFaults(path: string, text: string): string[] {
  return valueImports(text).flatMap(({ source, names }) => {
    const allowed = SERIES_LIBRARY[source];
    if (allowed !== undefined) return faults(path, source, names, (name) => allowed.includes(name));
    if (!source.startsWith(".")) return [];
    const target = posix.join(posix.dirname(path), source);
    const [room, ...inner] = target.split("/");
    if (!COMPUTING.has(room!)) return [];
    if (room === "air" && EXERCISES.test(path)) return [];
    if (inner.join("/") !== "mod.ts") return faults(path, target, names, () => false);
    return faults(path, target, names, (name) => DATA.test(name) || NAMING.has(name));
  });
}

function faults(
  path: string,
  source: string,
  names: readonly string[],
  may: (name: string) => boolean,
): string[] {
  return names.filter((name) => !may(name)).map((name) =>
    `lib/${path}: takes ${name} from ${source}: display code formats only; compute it in a chapter`
  );
}

/** Every such fault of the display code in a folder of the library. */
export async function showFaults(library: string): Promise<string[]> {
  const found: string[] = [];
  for await (const path of modulesIn(library, "show")) {
    found.push(...displayFaults(path, await Deno.readTextFile(posix.join(library, path))));
  }
  return found;
}
