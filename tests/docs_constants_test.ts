import { assert, assertEquals } from "@std/assert";
import { join } from "node:path";
import { PROJECT_FOLDER } from "winterground/commands/terminal.ts";

/**
 * Constants of the library that pages state: file, name of the constant (or of its key), page, and the
 * words around the number, with # where it stands. A factor turns the value into what the page says.
 */
const STATED: readonly (readonly [
  file: string,
  name: string,
  page: string,
  words: string,
  factor?: number,
])[] = [
  ["study/run/cache.ts", "entries", "study-file", "at most # entries"],
  ["study/run/cache.ts", "bytes", "study-file", "entries and # MB", 1e-6],
  ["study/file/read_text.ts", "settings", "study-file", "columns files may have # MB", 1e-6],
  ["study/file/read_text.ts", "table", "study-file", "prices, fan curves) # MB", 1e-6],
  ["study/file/faults.ts", "NAMED", "study-file", "the first # are named"],
  ["basics/yaml_limits.ts", "TOLD", "study-file", "repeated keys the first #"],
  ["basics/yaml_limits.ts", "DEEPEST", "study-file", "more than # brackets deep"],
  ["study/file/yaml_source.ts", "MOST_ALIASES", "study-file", "more than # uses of aliases"],
  ["study/file/field_schema.ts", "MOST_ENTRIES", "study-file", "a list with more than # entries"],
  ["press/prelude.ts", "MOST_SHOWN", "press", "…) | # million characters", 1e-6],
  ["press/prelude.ts", "MOST_PRINTED", "press", "`console` | # million characters", 1e-6],
  ["press/prelude.ts", "MOST_IN_NOTEBOOK", "press", "of a notebook | # million characters", 1e-6],
  ["press/cell_limit.ts", "DEFAULT_CELL_LIMIT", "press", "`--cell-limit`, default # s"],
  ["climate/gaps.ts", "LONGEST_GAP", "climate", "Gaps of up to # hours"],
  [
    "climate/read/table.ts",
    "FAHRENHEIT_HOURS",
    "climate",
    "temperature column with # hours or more",
  ],
  [
    "climate/mend/complete.ts",
    "DEFAULT_WIND_SPEED",
    "climate",
    "wind speed | m/s | # m/s in every",
  ],
  [
    "climate/mend/complete.ts",
    "DEFAULT_WIND_SPEED",
    "climate-files",
    "column of wind # m/s are taken",
  ],
  ["climate/mend/quality_sensors.ts", "STILL_HOURS", "climate", "stuck sensors (# hours"],
  ["climate/mend/quality_sensors.ts", "JUMP", "climate", "spikes (# K"],
  [
    "climate/mend/quality_sensors.ts",
    "HUMIDITY_JUMP",
    "climate",
    "spikes (10 K, # % humidity",
    100,
  ],
  ["climate/mend/quality_sensors.ts", "PRESSURE_DEPARTURE", "climate", "pressure # % off", 100],
  ["climate/cold_spells.ts", "LIFT_BY_SUN", "climate", "temperature + # K per W/m²"],
  ["climate/winters/memory.ts", "SLOW", "climate", "b one of first order (#)"],
  [
    "climate/winters/winter.ts",
    "CLEARNESS_PERSISTENCE",
    "climate",
    "autoregression, φ = #, linked",
  ],
  ["climate/winters/winter.ts", "WIND_PERSISTENCE", "climate", "hour-to-hour autocorrelation #"],
  ["house/skin/films.ts", "DESIGN_WIND", "house", "the winter design wind of # m/s"],
  ["house/skin/films.ts", "FLOOR_FILM", "house", "film coefficients # inside"],
  ["house/skin/pane_snow.ts", "SLIDE", "house", "it slides off #·sin(tilt)"],
  ["house/skin/pane_snow.ts", "EXTINCTION", "house", "It lets through exp(−#·d)"],
  ["store/air/site_tubes.ts", "FILM_WATER", "store", "Up to # kg/m² of condensate"],
  ["store/seasons/sight.ts", "FULL_SUN", "store", "full sun (# W/m²)"],
  ["tubes/compute.ts", "MOST_USUAL_SPEED", "tubes", "above # m/s a notice warns"],
  ["fan/compute.ts", "LEAST_FLOW_RATIO", "fan", "delivers less than # % of the design flow", 100],
  ["measured/flows/readings.ts", "SHARED_ERROR", "measured", "(correlation #; common practice"],
  ["measured/balance.ts", "PROBES_STAND_FOR", "measured", "whole store to ±# K"],
  ["worth/designs/field_air.ts", "HEADER_SPEED", "worth", "at most # m/s in headers"],
  ["worth/designs/field_air.ts", "RISER_SPEED", "worth", "# m/s in risers"],
  ["worth/designs/field_air.ts", "MOST_FLOW_RATIO", "worth", "the fans move 90 to # % of the", 100],
  ["fan/compute.ts", "LEAST_FLOW_RATIO", "worth", "the fans move # to", 100],
  ["tubes/search_around.ts", "PRESSURE_MAX", "worth", "# Pa at most"],
  ["worth/designs/sieve.ts", "TRIES", "worth", "three of # drawn ones"],
  ["worth/designs/search.ts", "ROUND", "worth", "over the cost; then # at a time"],
  ["worth/designs/search.ts", "JUDGED_A_ROUND", "worth", "up to # designs beside"],
];

/** Numbers that pages write as words. */
const WORDS: ReadonlyMap<number, string> = new Map([
  [6, "six"],
  [20, "twenty"],
  [50, "fifty"],
  [100, "a hundred"],
]);

/** The number that stands behind a name in a file of the library. */
function constantOf(source: string, name: string): number | undefined {
  const found = new RegExp(`\\b${name}(?:: \\w+)?(?: =|:) (-?[\\d_.]+(?:e-?\\d+)?)\\b`).exec(
    source,
  );
  return found === null ? undefined : Number(found[1]!.replaceAll("_", ""));
}

/** The number that a page states between the words, as written; undefined where it does not. */
function statedIn(page: string, words: string): number | undefined {
  const plain = page.replaceAll(/\s+/g, " ");
  const [before, after] = words.split("#");
  for (let from = plain.indexOf(before!); from >= 0; from = plain.indexOf(before!, from + 1)) {
    const rest = plain.slice(from + before!.length);
    const word = [...WORDS].find(([, word]) => rest.startsWith(`${word}${after}`));
    if (word !== undefined) return word[0];
    const number = /^[−-]?\d+(?:\.\d+)?/.exec(rest)?.[0];
    if (number !== undefined && rest.slice(number.length).startsWith(after!)) return Number(number);
    if (before === "") break;
  }
  if (before !== "") return undefined;
  const found = new RegExp(`(\\d+(?:\\.\\d+)?)${after!.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&")}`)
    .exec(plain);
  return found === null ? undefined : Number(found[1]);
}

Deno.test("constants that pages state are those of the library", () => {
  // Property: the page against the file that holds the constant
  const faults: string[] = [];
  for (const [file, name, page, words, factor = 1] of STATED) {
    const value = constantOf(Deno.readTextFileSync(join(PROJECT_FOLDER, "lib", file)), name);
    const said = statedIn(
      Deno.readTextFileSync(join(PROJECT_FOLDER, "docs", `${page}.md`)),
      words,
    );
    if (value === undefined) faults.push(`lib/${file} has no number ${name}`);
    else if (said === undefined) faults.push(`docs/${page}.md does not say "${words}"`);
    else if (Math.abs(said - value * factor) > 1e-9 * Math.abs(said)) {
      faults.push(`docs/${page}.md says ${said} in "${words}"; lib/${file} has ${value}`);
    }
  }
  assertEquals(faults, []);
  assert(STATED.length > 30);
});

Deno.test("constantOf() and statedIn() read what files and pages write", () => {
  // Property: both sides of the comparison can fail
  assertEquals(constantOf("const MOST_SHOWN = 10_000_000;", "MOST_SHOWN"), 1e7);
  assertEquals(constantOf("const L: X = { entries: 1000, bytes: 400e6 };", "bytes"), 4e8);
  assertEquals(constantOf("const A = 3;", "B"), undefined);
  assertEquals(statedIn("at most\n1000 entries", "at most # entries"), 1000);
  assertEquals(statedIn("the first fifty are named", "the first # are named"), 50);
  assertEquals(statedIn("6 m/s in risers", "# m/s in risers"), 6);
  assertEquals(statedIn("at most ten entries", "at most # entries"), undefined);
});
