import { assertMatch } from "@std/assert";
import * as tubes from "winterground/tubes";
import { type FieldSearch } from "../../../lib/store/mod.ts";
import { costClasses, fieldPicks, type TubeAlong } from "../../../lib/tubes/mod.ts";
import { checkFigures } from "../figure_rules.ts";
import { tubesResult } from "./sample.ts";
import { storeResult } from "../store/sample.ts";
import { candidate, front } from "../../tubes/candidates.ts";

const speeds = [1, 2, 3].map((airSpeed) => ({
  ...tubesResult,
  airSpeed,
  pressureDrop: 8.5 * airSpeed ** 2,
}));

const rows = Array.from({ length: 30 }, (_, index) => ({
  along: (index + 1) * 0.5,
  temperature: 15 + 12 * Math.exp(-index / 10),
  relativeHumidity: 0.9,
  dryTemperature: 15 + 12 * Math.exp(-index / 10),
  sensible: 60 * Math.exp(-index / 10),
  latent: 80 * Math.exp(-index / 10),
  dry: 61 * Math.exp(-index / 10),
}));

const along = {
  rows,
  wall: 14,
  intake: { temperature: 28, relativeHumidity: 0.7 },
  moist: { sensible: 300, latent: 400 },
} as unknown as TubeAlong;

const own = { ...candidate(3), heat: 22 };

const search: FieldSearch = {
  front,
  picks: fieldPicks({ front, own }),
  costClasses: costClasses(front),
  allowed: 40,
  refused: { "air too fast": 9, "too wide for the floor": 4 },
  own,
};

checkFigures({
  tubeLength: [() => tubes.lengthChart(tubesResult), ["Pa", "length, m"]],
  tubeSpeed: [() => tubes.speedChart(speeds, tubesResult), ["Pa", "m/s"]],
  marginalHeat: [
    () =>
      tubes.marginalHeatChart(
        [1, 10].map((days) => ({
          days,
          rows: [5, 10, 15, 20].map((length) => ({
            length,
            heat: days * (1 - Math.exp(-length / 8)),
            marginalHeat: days * Math.exp(-length / 8) / 8,
            marginalHeatPerDay: Math.exp(-length / 8) / 8,
            pressureDrop: 2 * length,
          })),
        })),
        tubesResult,
        8,
      ),
    ["kWh", "length, m"],
  ],
  along: [() => tubes.alongChart(along), ["degC", "W/m", "latent"]],
  condensate: [() => tubes.condensateChart(storeResult), ["litres", "Jul"]],
  search: [() => tubes.searchChart(search), ["kWh a day", "this study", "cost"]],
});

Deno.test("searchChart() says why where no field keeps to the limits", () => {
  // Property: a clear answer, not an empty picture
  const item = tubes.searchChart({ ...search, front: [], allowed: 0, costClasses: null });
  assertMatch(item["text/plain"], /No design meets the limits: air too fast \(9\)/);
});
