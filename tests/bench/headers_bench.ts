/** Speed of the header network, of the workmanship trials and of the search of fields. */
import {
  groupNetwork,
  headerGroups,
  scatterWorkmanship,
  solveNetwork,
} from "../../lib/headers/mod.ts";
import { DEMO_SEARCH_PRICES, searchAround } from "../../lib/tubes/mod.ts";
import { field, HEADERS, HOUSE, PIT, STATE, TUBES } from "../headers/fields.ts";

const airFlow = 400 * 0.0163;
const headers = { ...HEADERS, diameter: 1.5, returnDiameter: 1.5 };
const large = (tube: string) =>
  groupNetwork(
    headerGroups(headers, field({ tube, count: 400, airFlow }), STATE)[0]!.group,
  );
const corrugated = large("corrugated-4in");
const smooth = large("smooth-4in");
const group = headerGroups({ ...HEADERS, layout: "U" }, field(), STATE)[0]!.group;
const careless = { insertionMin: 0, insertionMax: 0.1, burrShare: 0.5, burrLoss: 0.8 };

Deno.bench("network of 400 corrugated tubes", () => {
  solveNetwork(corrugated, airFlow);
});

Deno.bench("network of 400 smooth tubes", () => {
  solveNetwork(smooth, airFlow);
});

Deno.bench("100 trials of careless holes on 16 tubes", () => {
  scatterWorkmanship(group, 0.26, { workmanship: careless, trials: 100, seed: 1 });
});

Deno.bench("search round a field", () => {
  searchAround({ ...TUBES, count: 36, layers: 2, airFlow: 0.8 }, {
    house: HOUSE,
    ...STATE,
    footingDepth: 0.9,
    soil: { conductivity: 1.3, heatCapacity: 2.2e6 },
    swing: 8,
    otherPressure: 20,
    fanEfficiency: 0.3,
    fanHours: 12,
    prices: DEMO_SEARCH_PRICES,
    pit: PIT,
  });
});
