import * as headers from "winterground/headers";
import { checkFigures } from "../figure_rules.ts";
import { tubesResult } from "../tubes/sample.ts";
import { headersResult } from "./sample.ts";

const layouts = (["U", "Z", "centre", "two-ended"] as const).map((layout, index) => ({
  layout,
  result: {
    ...headersResult,
    groups: Array.from({ length: 20 }, (_, tube) => tube < 10 ? 0 : 1),
    unevenness: 0.02 * (index + 1),
    heatFactor: 0.999,
  },
}));

const spread = (mean: number) => ({ mean, low: mean - 0.02, high: mean + 0.01 });

const ways = ["flanged, all flush", "0 to 25 mm in, burrs on half"].map((name, index) => ({
  name,
  result: {
    trials: 100,
    flowMin: spread(0.95 - index / 20),
    flowMax: spread(1.05 + index / 20),
    heatAtEqualFlow: spread(1),
    heatAtEqualPressure: spread(1 - index / 20),
  },
}));

checkFigures({
  tubeFlow: [() => headers.tubeFlowChart(headersResult), ["mean, –"]],
  headerPressure: [() => headers.pressureChart(headersResult), ["Pa"]],
  layouts: [() => headers.layoutChart(layouts, tubesResult), ["mean, –", "opposite ends"]],
  workmanship: [() => headers.workmanshipChart(ways), ["burrs on half", "constant fan pressure"]],
});
