/**
 * A year of five-minute rows with 20 columns, read and put on hours, against the same text only
 * split into cells by the CSV package.
 *
 * @module
 */
import Papa from "papaparse";
import { parseLogMap, readLog } from "../../lib/measured/mod.ts";

const COLUMNS = 20;
const ROWS = 105_120;
const START = Date.UTC(2026, 0, 1);

const sensors = Array.from({ length: COLUMNS }, (_, k) => `t${k}`);
const map = parseLogMap(
  "loggers:\n  house:\n    sensors:\n" +
    sensors.map((name, k) =>
      `      ${name}: { column: ${name}, quantity: airTemperature, unit: degF, zone: place ${
        k >> 1
      } }\n`
    ).join(""),
  "map.yaml",
);

function* text(): Generator<string> {
  yield ["time", ...sensors].join(",") + "\n";
  for (let at = 0; at < ROWS; at += 1000) {
    const lines = Array.from({ length: Math.min(1000, ROWS - at) }, (_, i) => {
      const time = new Date(START + (at + i) * 300_000).toISOString().slice(0, 16);
      const day = Math.sin((at + i) * 2 * Math.PI / 288);
      const cells = sensors.map((_, k) =>
        (41 + 9 * day + 3 * Math.sin((at + i + 31 * (k >> 1)) / 40) +
          ((at + i) * (k + 7) % 13) / 20)
          .toFixed(2)
      );
      return [time, ...cells].join(",");
    });
    yield lines.join("\n") + "\n";
  }
}

const pieces = [...text()];

Deno.bench({
  name: "a year of 5-minute rows, 20 columns: cells only, by the CSV package",
  group: "log",
  baseline: true,
  fn: () => {
    Papa.parse(pieces.join(""), { delimiter: "," });
  },
});

Deno.bench({
  name: "the same year read, faults looked for, on hours",
  group: "log",
  fn: () => {
    readLog([{ file: "house.csv", text: pieces }], map, { step: 3600 });
  },
});
