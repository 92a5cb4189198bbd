import { assertAlmostEquals, assertLess } from "@std/assert";
import { defaultStudyPath, openStudy } from "../../lib/study/mod.ts";
import { requestOf } from "../bench/store_request.ts";
import { airDifference, fastEngine, fullEngine, runWinter } from "../support/freezing_runs.ts";

const OPEN_DATA = Deno.env.get("OPEN_DATA");
const SKIPPED = OPEN_DATA === undefined ? " (skipped: OPEN_DATA is not set)" : "";

/** October to January. */
const HOURS = 123 * 24;
/** W, of the heater */
const PLACES = [
  ["Fargo, North Dakota", "tmy3_nd_fargo.csv", Infinity],
  ["International Falls, Minnesota", "tmy3_mn_international_falls.csv", 0],
] as const;

for (const [place, file, heater] of PLACES) {
  Deno.test({
    name: `the fast engine freezes like the full model in the weather of ${place}${SKIPPED}`,
    ignore: OPEN_DATA === undefined,
    fn: async () => {
      // Source: typical year TMY3, National Solar Radiation Data Base; the reference freezes cell by cell
      // and meets Neumann's front (store_freezing_test.ts). The demo's store in steps of 300 s in
      // every hour: 0.05 K of 99 % of the hours from December on, half a hundredth of the heat in
      // and out and of the back-up heat.
      const climate = `${OPEN_DATA}/climate/${file}`;
      const request = await requestOf(await openStudy(defaultStudyPath(), { climate }), 2);
      const given = { request, steps: [300], shortSteps: true, heater };
      const fast = runWinter(given, fastEngine(given), HOURS);
      const full = runWinter(given, fullEngine(given), HOURS);
      assertLess(airDifference(fast, full).rms, 0.05, "air");
      assertAlmostEquals(fast.heatIn / full.heatIn, 1, 0.005, "heat in");
      assertAlmostEquals(fast.heatOut / full.heatOut, 1, 0.005, "heat out");
      if (heater > 0) assertAlmostEquals(fast.heater / full.heater, 1, 0.005, "back-up heat");
    },
  });
}
