import { assert, assertAlmostEquals } from "@std/assert";
import {
  balancingOrifices,
  orificeDiameter,
  orificeLoss,
  solveNetwork,
} from "../../lib/headers/mod.ts";
import { closedFormNetwork } from "./closed_form_networks.ts";

Deno.test("balancingOrifices() makes all flows equal and gives no plate to the poorest tube", () => {
  // Property: definition
  const network = closedFormNetwork({
    count: 16,
    areaRatio: 1.5,
    loss: 6,
    dividing: 1,
    combining: 1.8,
    arrangement: "Z",
  });
  const balance = balancingOrifices(network, 1);
  assertAlmostEquals(Math.min(...balance.losses), 0, 1e-6);
  const tubes = network.tubes.map((tube, i) => ({
    ...tube,
    minorLoss: tube.minorLoss + balance.losses[i]!,
  }));
  const { flows, pressureDrop } = solveNetwork({ ...network, tubes }, 1);
  flows.forEach((flow) => assertAlmostEquals(flow, 1 / 16, 1e-7));
  assert(pressureDrop > solveNetwork(network, 1).pressureDrop);
});

Deno.test("orificeDiameter() inverts orificeLoss()", () => {
  // Property: inverse of inverse
  for (const ratio of [0.2, 0.5, 0.9]) {
    const hole = orificeDiameter(orificeLoss(ratio), 0.1);
    assertAlmostEquals((hole / 0.1) ** 2, ratio, 1e-9);
  }
});
