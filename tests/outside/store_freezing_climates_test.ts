import { assertAlmostEquals, assertLess } from "@std/assert";
import { readClimate } from "../../lib/climate/mod.ts";
import { airDifference, fastEngine, fullEngine, runWinter } from "../support/freezing_runs.ts";
import { standInRequest } from "../store/stand_in.ts";

const OPEN_DATA = Deno.env.get("OPEN_DATA");
const SKIPPED = OPEN_DATA === undefined ? " (skipped: OPEN_DATA is not set)" : "";

const PLACES = [
  ["Fargo, North Dakota", "tmy3_nd_fargo.csv"],
  ["International Falls, Minnesota", "tmy3_mn_international_falls.csv"],
] as const;

for (const [place, file] of PLACES) {
  Deno.test({
    name: `the fast engine freezes like the full model in the weather of ${place}${SKIPPED}`,
    ignore: OPEN_DATA === undefined,
    fn: () => {
      // Source: typical year TMY3, National Solar Radiation Data Base; the reference freezes cell by cell
      // and meets Neumann's front (store_freezing_test.ts). 0.08 K of 99 % of the hours of December to
      // March, 0.5 % of back-up heat claimed, and 1.5 and 2.5 % of heat in and out of half a
      // year in this small house, in which one afternoon more of
      // charging is 1 %.
      const text = Deno.readTextFileSync(`${OPEN_DATA}/climate/${file}`);
      const request = standInRequest({
        climate: readClimate(text, { file }),
        store: { slices: 3 },
      });
      for (const heater of [0, Infinity]) {
        const given = { request, steps: [300], shortSteps: true, heater };
        const fast = runWinter(given, fastEngine(given));
        const full = runWinter(given, fullEngine(given));
        assertLess(airDifference(fast, full).rms, 0.08, `air, heater ${heater}`);
        assertAlmostEquals(fast.heatIn / full.heatIn, 1, 0.015, "heat in");
        assertAlmostEquals(fast.heatOut / full.heatOut, 1, 0.025, "heat out");
        if (heater > 0) assertAlmostEquals(fast.heater / full.heater, 1, 0.005, "back-up heat");
      }
    },
  });
}
