// Property: a study's map may be a YAML file or a sensor list; both read the same log.
import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/basics/mod.ts";
import { readStudyLog } from "../../lib/measured/study_log.ts";

const YAML = `loggers:
  duct:
    sensors:
      t: { column: t, quantity: airTemperature, unit: degF, zone: intake, accuracy: 0.2 K }
`;
const LIST = "sensor,logger,quantity,unit,zone,accuracy\nt,duct,airTemperature,degF,intake,0.2 K\n";
const LOGS = [{
  name: "duct.csv",
  text: "time,t\n2026-01-05 01:00,50\n2026-01-05 02:00,59\n2026-01-05 03:00,68\n",
}];
const SETTING = { timeZone: -6, step: 3600 };

Deno.test("readStudyLog(): takes a sensor list where the map's name ends in .csv", () => {
  const one = readStudyLog({ map: { name: "map.yaml", text: YAML }, logs: LOGS }, SETTING);
  const other = readStudyLog({ map: { name: "sensors.csv", text: LIST }, logs: LOGS }, SETTING);
  assertEquals([...other.channels[0]!.values].map(Math.round), [10, 15, 20]);
  assertEquals(other.channels, one.channels);
  assertEquals(other.start, Date.UTC(2026, 0, 5, 6) / 1000);
  assertThrows(
    () => readStudyLog({ map: { name: "map.yaml", text: LIST }, logs: LOGS }, SETTING),
    InputError,
    "map.yaml",
  );
});
