import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import Papa from "papaparse";
import { degreeHoursBelow, summariseClimate } from "winterground/climate/mod.ts";
import { openStudy } from "winterground/study/file/open.ts";
import { defaultStudyPath } from "winterground/study/file/check_study.ts";

const OPEN_DATA = Deno.env.get("OPEN_DATA");
const ignore = OPEN_DATA === undefined;
const SKIPPED = ignore ? " (skipped: OPEN_DATA is not set)" : "";
const FOLDER = `${OPEN_DATA}/climate`;

/** Mean degC, coldest hour degC, global kWh/m², degree-hours below 18.3 degC over 24, from the files themselves. */
const FACTS: Readonly<Record<string, readonly [number, number, number, number]>> = {
  "tmy3_mn_international_falls.csv": [3.36, -35.6, 1261, 5702],
  "tmy3_nd_fargo.csv": [5.26, -32.2, 1406, 5153],
  "tmy3_mt_wolf_point_fort_peck.csv": [5.16, -33.0, 1328, 5104],
  "tmy3_co_leadville.csv": [2.74, -27.0, 1673, 5729],
  "tmy3_az_phoenix.csv": [23.80, 2.2, 2094, 692],
  "nsrdb_tmy_golden_co_psm3.csv": [9.77, -15.0, 1686, 3646],
  "pvgis_tmy_piemonte_45N_8E.csv": [13.56, -2.3, 1436, 2259],
};

for (const [file, [mean, coldest, global, degreeDays]] of Object.entries(FACTS)) {
  Deno.test({
    name: `the demo study opens in the climate of ${file}; mean, minimum, radiation, degree-days ` +
      "agree with sums made apart from this project (NREL TMY3, NREL NSRDB, JRC PVGIS)" +
      SKIPPED,
    ignore,
    async fn() {
      // Source: sums over the published files, printed to their last digit
      const study = await openStudy(defaultStudyPath(), { climate: `${FOLDER}/${file}` });
      const result = summariseClimate(study.climate);
      assertAlmostEquals(result.meanTemperature, mean, 0.005001);
      assertAlmostEquals(result.coldestHour, coldest, 0.05001);
      assertAlmostEquals(result.globalRadiation, global, 0.5001);
      assertAlmostEquals(degreeHoursBelow(study.climate.dryBulb, 18.3) / 24, degreeDays, 0.5001);
      const apart = study.notices.filter(({ text }) => text.includes("Aldersett"));
      assertEquals(apart.length, 1, "the place of the file is not that of the study: one notice");
    },
  });
}

const US_COLUMNS = `header: no
delimiter: semicolon
missing: ["x"]
place: {name: Fargo, latitude: 46.933, longitude: -96.817, elevation: 274, timeZone: -6}
time:
  stamp: end
  read:
    - {column: 8, format: YYYY/MM/DD}
    - {column: 1, format: "HH:mm"}
columns:
  windSpeed: {column: 2, unit: mph}
  dewPoint: {column: 3, unit: degF}
  dryBulb: {column: 4, unit: degF}
  diffuseHorizontal: {column: 5, unit: "Btu/(h ft2)"}
  pressure: {column: 6, unit: psi}
  globalHorizontal: {column: 7, unit: "Btu/(h ft2)"}
  relativeHumidity: {column: 9, unit: "%"}
  directNormal: {column: 10, unit: "Btu/(h ft2)"}
`;

/** A TMY3 file without its heads, in US units and another order of columns. */
function rewriteInUsUnits(text: string): string {
  const rows = Papa.parse<string[]>(text.trim()).data;
  const heads = rows[1]!;
  const at = (head: string) => heads.findIndex((name) => name.startsWith(head));
  const [date, time] = [0, 1];
  const flux = (value: string) => String(Number(value) / (1055.05585262 / 3600 / 0.09290304));
  const degF = (value: string) => String(Number(value) * 1.8 + 32);
  const lines = rows.slice(2).map((row) => {
    const cell = (head: string) => row[at(head)]!;
    const [month, day, year] = row[date]!.split("/");
    return [
      row[time],
      String(Number(cell("Wspd (m/s)")) / 0.44704),
      degF(cell("Dew-point")),
      degF(cell("Dry-bulb")),
      flux(cell("DHI (W")),
      String(Number(cell("Pressure")) * 100 / 6894.757293168),
      flux(cell("GHI (W")),
      `${year}/${month}/${day}`,
      cell("RHum"),
      flux(cell("DNI (W")),
    ].join(";");
  });
  return lines.join("\n") + "\n";
}

Deno.test({
  name: "a TMY3 year without heads, in US units and another column order, gives the same climate" +
    SKIPPED,
  ignore,
  async fn() {
    // Property: the same year through two doors
    const file = `${FOLDER}/tmy3_nd_fargo.csv`;
    const folder = await Deno.makeTempDir();
    try {
      const climate = `${folder}/fargo_us.csv`;
      const columns = `${folder}/fargo_us.yaml`;
      await Deno.writeTextFile(climate, rewriteInUsUnits(await Deno.readTextFile(file)));
      await Deno.writeTextFile(columns, US_COLUMNS);
      const plain = await openStudy(defaultStudyPath(), { climate: file });
      const other = await openStudy(defaultStudyPath(), { climate, columns });
      for (
        const name of [
          "dryBulb",
          "relativeHumidity",
          "globalHorizontal",
          "directNormal",
          "diffuseHorizontal",
          "windSpeed",
          "pressure",
        ] as const
      ) {
        const worst = plain.climate[name].reduce(
          (most, value, hour) => Math.max(most, Math.abs(value - other.climate[name][hour]!)),
          0,
        );
        const scale = Math.max(...plain.climate[name].map(Math.abs));
        assert(worst <= 1e-9 * scale, `${name} differs by ${worst}`);
      }
    } finally {
      await Deno.remove(folder, { recursive: true });
    }
  },
});
