import { assertLess } from "@std/assert";
import { YEAR_STEPS } from "../../lib/store/step_report.ts";
import { defaultStudyPath, openStudy } from "../../lib/study/mod.ts";
import { requestOf } from "../bench/store_request.ts";
import { fastEngine, runWinter } from "../support/freezing_runs.ts";

const OPEN_DATA = Deno.env.get("OPEN_DATA");
const SKIPPED = OPEN_DATA === undefined ? " (skipped: OPEN_DATA is not set)" : "";

Deno.test({
  name:
    `the steps of a heated winter in Fargo, TMY3 of the National Solar Radiation Data Base, cost at most 0.37 % of its heat in${SKIPPED}`,
  ignore: OPEN_DATA === undefined,
  fn: async () => {
    // Property: the same winter of the demo's house in steps of 100 s in every hour. A switch of the
    // fan looked for along a straight line costs 0.42 %.
    const climate = `${OPEN_DATA}/climate/tmy3_nd_fargo.csv`;
    const request = await requestOf(await openStudy(defaultStudyPath(), { climate }), 3);
    const heatIn = (steps: readonly number[], shortSteps: boolean) => {
      const given = { request, steps, shortSteps, heater: Infinity };
      const { heatIn } = runWinter(given, fastEngine(given));
      return heatIn;
    };
    const lost = 1 - heatIn(YEAR_STEPS, false) / heatIn([100, 3600], true);
    assertLess(Math.abs(lost), 0.0037);
  },
});
