import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import Papa from "papaparse";
import { parseLogMap, readLog } from "../../lib/measured/mod.ts";

const folder = Deno.env.get("OPEN_DATA");
const skipped = folder === undefined ? " [skipped: OPEN_DATA is not set]" : "";

const MAP = parseLogMap(
  `
timeZone: UTC+1
loggers:
  weather:
    files: weather.csv
    time: { read: [{ column: Date, format: "MM/DD/YYYY HH:mm" }] }
    sensors:
      outdoor: { column: Tout, quantity: outsideTemperature, unit: degC, zone: outside }
      outdoor humidity: { column: Rhout, quantity: relativeHumidity, unit: "%", zone: outside }
      global: { column: Iglob, quantity: globalRadiation, unit: W/m2, zone: outside }
      wind: { column: Windsp, quantity: windSpeed, unit: m/s, zone: outside }
      longwave: { column: Pyrgeo, quantity: netLongwave, unit: W/m2, zone: outside }
  climate:
    files: reference_climate.csv
    time: { read: [{ column: Date, format: "MM/DD/YYYY HH:mm" }] }
    sensors:
      air: { column: Tair, quantity: airTemperature, unit: degC, zone: inside }
      humidity: { column: Rhair, quantity: relativeHumidity, unit: "%", zone: inside }
      air 2: { column: Tair_sigrow, quantity: airTemperature, unit: degC, zone: inside }
      humidity 2: { column: Rhair_sigrow, quantity: relativeHumidity, unit: "%", zone: inside }
      carbon dioxide: { column: CO2air, quantity: carbonDioxide, unit: ppm, zone: inside }
      pipe: { column: Tpipe, quantity: surfaceTemperature, unit: degC, zone: pipe }
      lee vent: { column: VentLee, quantity: ventOpening, unit: "%", zone: lee }
      wind vent: { column: VentWind, quantity: ventOpening, unit: "%", zone: wind }
      energy screen: { column: EnScr, quantity: curtain, unit: "%", zone: energy }
      blackout screen: { column: BlckScr, quantity: curtain, unit: "%", zone: blackout }
`,
  "map.yaml",
);

Deno.test({
  name:
    `readLog(): reads the open log of a glass compartment whole (autonomous-greenhouse experiment 2022)${skipped}`,
  ignore: folder === undefined,
  fn: () => {
    // Source: five-minute log of a glass compartment, open data of the autonomous-greenhouse
    // experiment 2022. Rows, and the sum of each column, as a plain CSV reader counts them.
    const sources = ["weather.csv", "reference_climate.csv"].map((name) => ({
      file: name,
      text: Deno.readTextFileSync(`${folder}/greenhouse/${name}`),
    }));
    const log = readLog(sources, MAP);
    assertEquals(log.step, 300);
    for (const [k, { text }] of sources.entries()) {
      const { data } = Papa.parse<Record<string, string>>(text, {
        header: true,
        skipEmptyLines: true,
        transformHeader: (head) => head.trim(),
      });
      const file = log.files[k]!;
      assertEquals(file.rows, data.length);
      assertEquals(file.read, data.length);
      assertEquals(file.named, 0);
      for (const { sensor, column } of MAP.loggers[k]!.sensors) {
        const cells = data.map((row) => row[column]!.trim()).filter((cell) =>
          cell !== "" && cell !== "NaN"
        ).map(Number);
        const channel = log.channels.find((one) => one.sensor.name === sensor.name)!;
        const values = channel.values.filter((value) => !Number.isNaN(value));
        // stamps without seconds lie up to a minute off the step: a step may end half covered
        assertAlmostEquals(values.length, cells.length, 4, sensor.name);
        const mean = (list: readonly number[] | Float64Array) =>
          [...list].reduce((sum, one) => sum + one, 0) / list.length;
        const scale = Math.max(1, Math.abs(mean(cells)));
        const share = ["%"].includes(
            MAP.loggers[k]!.sensors.find((one) => one.sensor.name === sensor.name)!.unit,
          )
          ? 100
          : 1;
        assertAlmostEquals(share * mean(values), mean(cells), 2e-3 * scale, sensor.name);
      }
    }
    // the only findings are its gaps, of which the longest is told to the hour
    assert(log.findings.every(({ kind }) => kind === "gap"));
    const longest = log.findings.filter(({ channel }) => channel === "air 2")
      .reduce((most, one) => Math.max(most, one.to - one.from), 0);
    assertAlmostEquals(longest / 3600, 69.6, 0.1);
  },
});
