/** A made-up fan. */
import { summariseFan } from "../../../lib/fan/mod.ts";
import type { FanCurve, FanInputs, FanResult } from "../../../lib/fan/types.ts";
import { made } from "../made.ts";

export const fanCurve = made<FanCurve>({
  id: "sample",
  name: "Sample fan",
  airFlow: [0, 0.2, 0.4, 0.6],
  staticPressure: [180, 150, 90, 0],
  power: [90, 110, 120, 110],
  outletArea: 0.1,
  source: "made up",
});
export const fanInputs = { fan: "sample", count: 1, speed: 1, filterDirty: 2 } as FanInputs;
export const fanResult = summariseFan(
  fanInputs,
  made<FanResult>({
    airFlow: 0.45,
    pressure: 70,
    power: 118,
    efficiency: 0.27,
    specificPower: 262,
    systemCoefficient: 70 / 0.45 ** 1.9,
    systemExponent: 1.9,
    stalled: false,
    density: 1.2,
    curve: fanCurve,
    systemCurve: [0.1, 0.3, 0.5, 0.7].map((airFlow) => ({
      airFlow,
      pressure: 70 * (airFlow / 0.45) ** 1.9,
    })),
    flowRatio: 0.95,
    dirtyFilter: { airFlow: 0.43, pressure: 77, power: 117 },
    notices: [],
  }),
);
