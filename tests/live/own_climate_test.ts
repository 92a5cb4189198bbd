import { assert, assertEquals, assertThrows } from "@std/assert";
import { join } from "node:path";
import { InputError } from "winterground/basics/mod.ts";
import { weatherTerms } from "winterground/live/build/study_data.ts";
import { ownClimate, type WeatherFile } from "winterground/live/read/own_climate.ts";
import { openStudy } from "winterground/study/mod.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { openSmallStudy, writeSmallStudy } from "../harness/small_study.ts";
import { COLUMNS, tableOf } from "./weather_case.ts";

const study = await openSmallStudy();
const terms = weatherTerms(study);
const fileOf = (name: string, text: string): WeatherFile => ({
  name,
  bytes: new TextEncoder().encode(text),
});
const table = tableOf(study.climate);
const small = [fileOf("mast.csv", table), fileOf("mast.yaml", COLUMNS)];

Deno.test("a page's own weather is that of the study opened with the same file", async (test) => {
  // Property: every hour, the place and what was found odd, to the bit
  await inTemporary(async (folder) => {
    const path = await writeSmallStudy(folder);
    const same = async (
      name: string,
      columns: string | undefined,
      files: readonly WeatherFile[],
    ) => {
      const climate = join(folder, name);
      await Promise.all(
        files.map((file) => Deno.writeFile(join(folder, file.name), file.bytes)),
      );
      const opened = await openStudy(path, {
        climate,
        columns: columns === undefined ? undefined : join(folder, columns),
      });
      const { source: _, ...expected } = opened.climate;
      const { source, ...found } = ownClimate(files, terms);
      assertEquals(source, name);
      assertEquals(found, expected);
    };
    await same("mast.csv", "mast.yaml", small);
    const data = Deno.env.get("OPEN_DATA");
    for (
      const name of [
        "tmy3_nd_fargo.csv",
        "nsrdb_tmy_golden_co_psm3.csv",
        "pvgis_tmy_piemonte_45N_8E.csv",
      ]
    ) {
      const told = data === undefined ? `${name} (skipped: no OPEN_DATA)` : name;
      await test.step({
        name: told,
        ignore: data === undefined,
        fn: async () => {
          const bytes = await Deno.readFile(`${data}/climate/${name}`);
          await same(name, undefined, [{ name, bytes }]);
        },
      });
    }
  });
});

Deno.test("normals make the year that the study makes of them", async () => {
  // Property: the demo place's normals, from which the small study has its year
  const name = "aldersett_normals.csv";
  const bytes = await Deno.readFile(new URL(`../../data/climates/${name}`, import.meta.url));
  assertEquals(ownClimate([{ name, bytes }], terms), study.climate);
});

Deno.test("a file that cannot be used says where and what to do", () => {
  // Property: file and line of the fault; no columns without a table, no second table, no wrong sign
  const broken = table.replace(/^(?:.*\n){500}/, (head) => `${head}cold;1;2;3;4\n`)
    .replace(/\n[^\n]*\n$/, "\n");
  const refused = (files: readonly WeatherFile[], words: RegExp, of = terms) => {
    const { message } = assertThrows(() => ownClimate(files, of), InputError);
    assert(words.test(message), message);
  };
  refused([fileOf("mast.csv", broken), small[1]!], /mast\.csv:501.*"T".*found "cold"/s);
  refused(
    [small[0]!, fileOf("mast.yaml", "columns: {wind: 1}")],
    /mast\.yaml:1: Unknown key "wind"/,
  );
  refused([small[0]!], /mast\.csv:1: Cannot recognise the layout.*columns file/);
  refused([small[1]!], /mast\.yaml: A columns file says how to read a table/);
  refused([small[0]!, small[0]!], /one year at a time/);
  refused([{ name: "x.csv", bytes: Uint8Array.of(65, 10, 255) }], /x\.csv:2: .*not UTF-8/);
  const east = COLUMNS +
    "place: {latitude: 49, longitude: 100, elevation: 500 m, timeZone: 7}\n";
  refused([small[0]!, fileOf("mast.yaml", east)], /mast\.csv: "place\.longitude".*wrong sign/);
});
