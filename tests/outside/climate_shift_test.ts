import { assert, assertAlmostEquals } from "@std/assert";
import { climateQuality, readClimate } from "winterground/climate/mod.ts";

const OPEN_DATA = Deno.env.get("OPEN_DATA");
const ignore = OPEN_DATA === undefined;
const SKIPPED = ignore ? " (skipped: OPEN_DATA is not set)" : "";
const FILES = [
  "tmy3_mn_international_falls.csv",
  "tmy3_nd_fargo.csv",
  "tmy3_mt_wolf_point_fort_peck.csv",
  "tmy3_co_leadville.csv",
  "tmy3_az_phoenix.csv",
];
/** Columns of a TMY3 file: global, direct normal, diffuse. */
const [GLOBAL, DIRECT, DIFFUSE] = [4, 7, 10];

/** A published year with its global radiation taken from other rows and its parts taken out. */
function globalOnly(file: string, late: number): string {
  const lines = Deno.readTextFileSync(`${OPEN_DATA}/climate/${file}`).split(/\r?\n/);
  const rows = lines.slice(2, 8762).map((line) => line.split(","));
  const global = rows.map((row) => row[GLOBAL]!);
  const moved = rows.map((row, hour) => {
    const cells = [...row];
    cells[GLOBAL] = global[(hour - late + 8760) % 8760]!;
    cells[DIRECT] = cells[DIFFUSE] = "-9900";
    return cells.join(",");
  });
  return [...lines.slice(0, 2), ...moved].join("\n");
}

Deno.test({
  name:
    "the global radiation of published years, moved by one or two hours, is named in every month " +
    "(NREL TMY3)" + SKIPPED,
  ignore,
  fn() {
    // Source: the published years, GHI taken from rows one or two before or after, DNI and DHI taken out
    for (const file of FILES) {
      for (const late of [-2, -1, 0, 1, 2]) {
        const year = readClimate(globalOnly(file, late), { file });
        const text = climateQuality(year).notices.map((one) => one.text).join("\n");
        const size = Math.abs(late) === 1 ? "an hour" : "2 hours";
        const said = `${size} too ${
          late > 0 ? "late" : "early"
        } relative to the sun in every month`;
        if (late === 0) assert(!text.includes("relative to the sun"), `${file}: ${text}`);
        else assert(text.includes(said), `${file} ${late}: ${text}`);
      }
    }
  },
});

Deno.test({
  name: "mendShift gives back the published year to the rounding of its rows (NREL TMY3)" + SKIPPED,
  ignore,
  fn() {
    // Source: the published GHI against that of the year moved by two hours and mended
    for (const file of FILES) {
      const sound = readClimate(globalOnly(file, 0), { file });
      const mended = readClimate(globalOnly(file, 2), { file, mendShift: true });
      sound.globalHorizontal.forEach((value, hour) =>
        assertAlmostEquals(mended.globalHorizontal[hour]!, value, 1e-9, `${file} ${hour}`)
      );
    }
  },
});
