import { assert, assertEquals } from "@std/assert";
import { join } from "node:path";
import { CHAPTERS } from "../../lib/study/mod.ts";

const LIBRARY = join(import.meta.dirname!, "../../lib");
const ROOMS = [...CHAPTERS.map(({ name }) => name), "measured", "study/file"];
/** Numbers that no reader sees: keys of a cache, values told as read, columns of made-up loggers. */
const NOT_FOR_READERS = [
  "climate/mend/complete.ts",
  "climate/read/plan.ts",
  "climate/read/table.ts",
  "measured/demo/forecast_file.ts",
  "measured/demo/winter_files.ts",
  "measured/demo/winter_truth.ts",
  "store/ground/operator.ts",
  "store/ground/zones.ts",
];

async function* sources(folder: string): AsyncGenerator<string> {
  for await (const entry of Deno.readDir(join(LIBRARY, folder))) {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory) yield* sources(path);
    else if (entry.name.endsWith(".ts")) yield path;
  }
}

Deno.test("no chapter writes a number for a reader by hand: notices go through lib/units", async () => {
  // Property: a later choice of SI or US units has one place to act on
  const faults: string[] = [];
  let seen = 0;
  for (const chapter of ROOMS) {
    const present = await Deno.stat(join(LIBRARY, chapter)).catch(() => null);
    if (present === null) continue;
    for await (const path of sources(chapter)) {
      seen++;
      if (NOT_FOR_READERS.includes(path)) continue;
      const lines = (await Deno.readTextFile(join(LIBRARY, path))).split("\n");
      lines.forEach((line, index) => {
        const comment = /^\s*(\*|\/\/)/.test(line);
        if (!comment && /\.to(Fixed|Precision|Exponential|LocaleString)\(/.test(line)) {
          faults.push(`lib/${path}:${index + 1}: ${line.trim()}`);
        }
      });
    }
  }
  assert(seen > 100, `only ${seen} files seen`);
  assertEquals(faults, []);
});
