import { assert, assertEquals } from "@std/assert";
import { deserialize, serialize } from "node:v8";
import { samePlain } from "../../../lib/basics/mod.ts";
import { ownSite, reducedSlice, sliceQuestion } from "../../../lib/store/seasons/soil_model.ts";
import { standInRequest } from "../stand_in.ts";

type Change = Parameters<typeof standInRequest>[0];

const question = (change: Change = {}) => sliceQuestion(ownSite(standInRequest(change)));

Deno.test("a slice is asked for anew by what lies in the soil, not by flow, control or length", () => {
  // Property: what is reduced hangs on geometry and soil alone
  const plan = question();
  const same: Change[] = [
    { tubes: { airFlow: 0.9 } },
    { tubes: { length: 9 } },
    { tubes: { tube: "corrugated-100", extraLosses: 4 } },
    { store: { chargeStart: 9, dischargeBelow: 5, reverse: false, slices: 12, spinUpYears: 1 } },
    { house: { crop: "none", heatSetPoint: 12, leakage: 2 } },
  ];
  for (const change of same) assert(samePlain(question(change), plan), JSON.stringify(change));
  const other: Change[] = [
    { tubes: { spacing: 0.5 } },
    { tubes: { depth: 0.7 } },
    { soil: { moisture: 0.3 } },
    { house: { width: 7 } },
    { house: { edgeInsulationDepth: 0.9 } },
    { store: { outsideSoil: 10 } },
  ];
  for (const change of other) assert(!samePlain(question(change), plan), JSON.stringify(change));
});

Deno.test("a reduced slice comes back from the disk's bytes to the bit", () => {
  // Property: what is kept is what was computed
  const slice = reducedSlice(question());
  assertEquals(deserialize(serialize(slice)), slice);
});
