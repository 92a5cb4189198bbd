import { assert, assertAlmostEquals, assertEquals, assertNotEquals } from "@std/assert";
import { HOURS_PER_YEAR } from "../../../lib/basics/mod.ts";
import type { ClimateYear } from "../../../lib/climate/types.ts";
import { demoLoggers, demoSensors } from "../../../lib/measured/demo/instruments.ts";
import { PLANTED } from "../../../lib/measured/demo/planted.ts";
import type { TrueYear } from "../../../lib/measured/demo/true_year.ts";
import { winterFiles } from "../../../lib/measured/demo/winter_files.ts";
import { loggerRows, type WinterSetting } from "../../../lib/measured/demo/winter_rows.ts";

const STEPS = 4 * HOURS_PER_YEAR;
const steps = (value: (hour: number) => number) =>
  Float64Array.from({ length: STEPS }, (_, k) => value((k + 0.5) / 4));
const hours = (value: (hour: number) => number) =>
  Float64Array.from({ length: HOURS_PER_YEAR }, (_, hour) => value(hour));
const day = (hour: number) => Math.sin(2 * Math.PI * hour / 24);
const probe = (k: number) => hours((hour) => 8 + k + day(hour) / (2 + k));

const YEAR: TrueYear = {
  air: steps((hour) => 12 + 6 * day(hour)),
  ratio: steps(() => 0.005),
  intake: steps((hour) => 13 + 6 * day(hour)),
  outlet: steps((hour) => 12 + 2 * day(hour)),
  outletRatio: steps(() => 0.006),
  airFlow: steps((hour) => hour % 6 < 3 ? 0.7 : 0),
  fanPower: steps((hour) => hour % 6 < 3 ? 180 : 0),
  heat: steps((hour) => hour % 6 < 3 ? 3000 * day(hour) : 0),
  latent: steps(() => 0),
  airChange: steps(() => 0.8),
  vents: steps(() => 0),
  loss: steps((hour) => 1500 + 100 * day(hour)),
  probes: [0, 1, 2, 3, 4, 5].map(probe),
  control: hours((hour) => 9 + 6 * day(hour)),
  garden: [0, 1, 2, 3].map(probe),
  pressure: hours(() => 95000),
};
const CLIMATE = {
  place: { timeZone: -6 },
  dryBulb: hours((hour) => -5 + 4 * day(hour)),
  globalHorizontal: hours((hour) => Math.max(0, 600 * day(hour))),
  windSpeed: hours(() => 3),
  relativeHumidity: hours(() => 0.7),
} as unknown as ClimateYear;
const SETTING: WinterSetting = {
  from: 304 * 86400,
  lasts: 151 * 86400,
  start: Date.UTC(2025, 10, 1, 6) / 1000,
  seed: 7,
  faults: PLANTED,
};

Deno.test("a winter without errors shows what is true, row by row, on the loggers' own clocks", () => {
  // Property: means of the true year; nothing lost, nothing shifted
  const sensors = demoSensors(YEAR, CLIMATE, SETTING);
  const [air, , soil] = demoLoggers(-6);
  const rows = loggerRows(air!, sensors, { ...SETTING, seed: null });
  assertEquals(rows.length, 151 * 96);
  assertEquals(rows[0]!.stamp, Date.UTC(2025, 10, 1, 0, 15) / 1000);
  const first = 304 * 96;
  assertAlmostEquals(rows[0]!.cells[0]!, YEAR.intake[first]!, 1e-9);
  assertAlmostEquals(rows[100]!.cells[4]!, YEAR.airFlow[first + 100]!, 1e-9);
  // over the turn of the year the true year goes on from its start
  const january = 61 * 96 + 5;
  assertAlmostEquals(rows[january]!.cells[2]!, YEAR.outlet[5]!, 1e-9);
  assertEquals(loggerRows(soil!, sensors, { ...SETTING, seed: null }).length, 151 * 24);
});

Deno.test("the same seed writes the same bytes, another seed others", () => {
  // Property: errors hang on the seed alone
  const text = (seed: number | null) => winterFiles(YEAR, CLIMATE, { ...SETTING, seed });
  assertEquals(text(7), text(7));
  assertNotEquals(text(7).logs, text(8).logs);
  assertNotEquals(text(7).logs, text(null).logs);
  const bytes = text(7).logs.reduce((sum, one) => sum + one.text.length, 0);
  assert(bytes < 2e6, `${bytes} bytes`);
});

Deno.test("every planted fault shows in its rows and nowhere else", () => {
  // Property: rows with faults less rows without, seed and noise alike
  const sensors = demoSensors(YEAR, CLIMATE, SETTING);
  for (const logger of demoLoggers(-6)) {
    const own = sensors.filter((one) => one.logger === logger.name);
    const sound = loggerRows(logger, sensors, { ...SETTING, faults: [] });
    for (const fault of PLANTED) {
      const names = own.map(({ name }) => name);
      const meant = [fault.channel, fault.other ?? ""];
      if (!meant.some((one) => one === logger.name || names.includes(one))) continue;
      const rows = loggerRows(logger, sensors, { ...SETTING, faults: [fault] });
      if (fault.kind === "gap") {
        assert(rows.length < sound.length, "no gap");
        continue;
      }
      assertEquals(rows.length, sound.length);
      let changed = 0;
      rows.forEach((row, k) => {
        const at = sound[k]!.stamp - SETTING.start + 6 * 3600;
        const within = at > fault.from - 8 * 3600 && at < fault.to + 8 * 3600;
        const moved = row.stamp !== sound[k]!.stamp ||
          row.cells.some((value, place) => {
            const same = value === sound[k]!.cells[place];
            if (!same) assert(meant.includes(names[place]!), `${names[place]} by ${fault.channel}`);
            return !same;
          });
        if (moved) changed++;
        if (moved) assert(within, `${fault.kind} outside its time`);
      });
      assert(changed > 0, `${fault.kind} of ${fault.channel} changes nothing`);
    }
  }
});
