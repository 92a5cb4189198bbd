/** Readers of the logs of a built house. @module */
import { findFaults, parseLogMap, parseSensorList, readLog } from "winterground/measured/mod.ts";
import { readTextFile } from "winterground/study/file/read_text.ts";
import type { Reader } from "./readers.ts";

const MAP = `loggers:
  house:
    time: { timeZone: UTC-6 }
    sensors:
      air: { column: air, quantity: airTemperature, unit: degF, zone: inside }
      humidity: { column: rh, quantity: relativeHumidity, unit: "%", zone: inside }
      power: { column: 4, quantity: power, unit: kW, zone: fan }
`;
const SENSORS = `sensor,logger,files,quantity,unit,zone,depth,time_zone,stamp,note
air,house,house.csv,airTemperature,degF,inside,,UTC-6,end,shaded
humidity,house,house.csv,relativeHumidity,%,inside,,UTC-6,end,
bed,ground,ground.csv,soilTemperature,degC,field,0.6 m,UTC-6,end,
`;

function logText(): string {
  const rows = Array.from({ length: 600 }, (_, i) => {
    const time = new Date(Date.UTC(2026, 0, 5) + i * 300_000).toISOString().slice(0, 16);
    return `${time},${(41 + 5 * Math.sin(i / 40)).toFixed(2)},${60 + (i % 7)},0.35`;
  });
  return ["time,air,rh,power", ...rows, ""].join("\n");
}

/** All of them. */
export const LOG_READERS: readonly Reader[] = [
  {
    name: "log of a built house",
    share: 5,
    bases: () => Promise.resolve([{ name: "house.csv", text: logText() }]),
    read: async (path) => {
      const text = await readTextFile(path, "log", "table");
      const { channels, ...rest } = findFaults(
        readLog([{ file: "house.csv", text }], parseLogMap(MAP, "map.yaml")),
      );
      // gaps are NaN by their meaning
      return [rest, channels.map(({ values }) => values.filter((value) => !Number.isNaN(value)))];
    },
  },
  {
    name: "map of a log",
    share: 5,
    bases: () => Promise.resolve([{ name: "map.yaml", text: MAP }]),
    read: async (path) => parseLogMap(await readTextFile(path, "log map", "settings"), path),
  },
  {
    name: "sensor list",
    share: 5,
    bases: () => Promise.resolve([{ name: "sensors.csv", text: SENSORS }]),
    read: async (path) => parseSensorList(await readTextFile(path, "sensor list", "table"), path),
  },
];
