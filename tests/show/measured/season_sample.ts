/** A made-up log of ten days, summed up, and a plan beside it; no claim about any real house. */
import { loggedBalance } from "../../../lib/measured/balance.ts";
import { loggedSeason } from "../../../lib/measured/logged_season.ts";
import type { MeasuredResult } from "../../../lib/measured/mod.ts";
import { planBesideLog } from "../../../lib/measured/plan_beside_log.ts";
import { clock, heatSensors, madeLog, type MadeSensor } from "../../measured/flows/made_log.ts";
import { hourly } from "../made.ts";

const seen = (
  name: string,
  quantity: MadeSensor["sensor"]["quantity"],
  zone: string,
  value: (s: number) => number,
): MadeSensor => ({ sensor: { name, quantity, zone, accuracy: 0.1 }, value });

const dark = (s: number) => clock(s) < 8 || clock(s) > 17;

const log = madeLog([
  ...heatSensors(),
  seen("house", "airTemperature", "inside", (s) => dark(s) ? 5 + Math.sin(s / 2e5) : 20),
  seen("control", "airTemperature", "control house", (s) => dark(s) ? 2 : 22),
  seen("outdoors", "outsideTemperature", "outside", (s) => -5 + 3 * Math.cos(s / 1e5)),
  seen("sun", "globalRadiation", "outside", (s) => dark(s) ? 0 : 300),
  seen("store", "soilTemperature", "store", (s) => 10 + s / 1e6),
], { count: 96 * 12 });

const found = loggedSeason(
  {
    ...log,
    findings: [{
      kind: "spike",
      channel: "outdoors",
      from: log.start + 3600,
      to: log.start + 7200,
      message: '"outdoors": a lone value far from those before and after',
    }],
  },
  { pressure: 95000, timeZone: 0, step: 900, fanHeats: true, fanOff: "never" },
);
if ("reason" in found) throw new Error(found.reason);
const season = found;

/** A result with everything in it. */
export const measuredResult: MeasuredResult = {
  reason: null,
  season,
  plan: planBesideLog(season, {
    heatIn: hourly((hour) => hour % 24 >= 9 && hour % 24 < 16 ? 9000 : 0),
    heatOut: hourly((hour) => hour % 24 >= 18 || hour % 24 < 7 ? 4000 : 0),
    fanPower: hourly(() => 150),
    running: hourly(() => 1),
    inside: hourly(() => 9),
    store: hourly(() => 10),
    outside: hourly(() => -4),
    airFlow: 0.9,
  }),
  balance: loggedBalance(season, { volume: 200, heatCapacity: 2e6 }),
  notices: [],
};

/** A study without logs. */
export const nothingMeasured: MeasuredResult = {
  reason: "the study names no logs",
  season: null,
  plan: null,
  balance: null,
  notices: [],
};
