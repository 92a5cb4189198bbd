import { assertAlmostEquals } from "@std/assert";
import { type HeaderLine, solveNetwork } from "../../lib/headers/mod.ts";
import { type ClosedFormCase, closedFormNetwork } from "../headers/closed_form_networks.ts";

/** Shares over the mean, and the closed form at the middle of each tube's stretch. */
function compare(given: ClosedFormCase, form: (place: number) => number): number[] {
  const { flows } = solveNetwork(closedFormNetwork(given), 1);
  const shares = Array.from(flows, (flow) => flow * given.count);
  shares.forEach((share, i) => {
    const expected = form((i + 0.5) / given.count);
    assertAlmostEquals(share, expected, 0.005 * expected, `tube ${i + 1} of ${given.count}`);
  });
  return shares;
}

const dividing = (areaRatio: number, loss: number) => (place: number): number => {
  const kappa = areaRatio * Math.sqrt(1 / loss);
  return kappa * Math.cos(kappa * (1 - place)) / Math.sin(kappa);
};

for (const count of [50, 200]) {
  Deno.test(`solveNetwork() reproduces the dividing header's closed form with ${count} tubes (after Bajura & Jones 1976)`, () => {
    // Source: closed form of the frictionless dividing header, after Bajura & Jones 1976
    // [bajura-jones-1976] and Wang 2011, recomputed; 0.5 %
    for (
      const [areaRatio, loss, first, last] of [
        [1, 4, 0.9152439, 1.0429148],
        [1, 10, 0.9664423, 1.0168632],
        [2, 4, 0.6420926, 1.1883951],
      ] as const
    ) {
      const form = dividing(areaRatio, loss);
      assertAlmostEquals(form(0), first, 1e-7);
      assertAlmostEquals(form(1), last, 1e-7);
      const arrangement = "dividing";
      compare({ count, areaRatio, loss, dividing: 1, combining: 1, arrangement }, form);
    }
  });

  Deno.test(`solveNetwork() reproduces the Z closed form 0.875 to 1.125 with ${count} tubes (after Bajura & Jones 1976)`, () => {
    // Source: closed form v/v̄ = 1 ± km²/2H, linear, recomputed; 0.5 %
    compare(
      { count, areaRatio: 1, loss: 4, dividing: 1, combining: 1, arrangement: "Z" },
      (place) => 0.875 + 0.25 * place,
    );
  });

  Deno.test(`solveNetwork() reproduces the U closed forms with ${count} tubes (after Bajura & Jones 1976)`, () => {
    // Source: closed forms: equal k uniform; k 1 and 2 v/v̄ = κ·cosh[κ(1−ξ)]/sinh κ, κ =
    // m√((k₂−k₁)/H)
    const given = { count, areaRatio: 1, loss: 4, dividing: 1, arrangement: "U" } as const;
    compare({ ...given, combining: 1 }, () => 1);
    const kappa = Math.sqrt((2 - 1) / 4);
    const form = (place: number): number =>
      kappa * Math.cosh(kappa * (1 - place)) / Math.sinh(kappa);
    assertAlmostEquals(form(0), 1.0819767, 1e-7);
    assertAlmostEquals(form(1), 0.9595174, 1e-7);
    compare({ ...given, combining: 2 }, form);
  });
}

Deno.test("one tube on two long headers loses f·L/D velocity heads in each (Darcy 1857)", () => {
  // Source: Darcy's formula by hand: 1 m³/s of 1.2 kg/m³ in 1 m² (D 1.128379 m) is 0.6 Pa a head; 30 m
  // at f 0.02 are 0.531736 heads, 0.319042 Pa in each header
  const network = closedFormNetwork({
    count: 1,
    areaRatio: 0.5,
    loss: 4,
    dividing: 1,
    combining: 1,
    arrangement: "Z",
  });
  const longer = (line: HeaderLine): HeaderLine => ({ ...line, frictionFactor: 0.02, lead: 30 });
  const drop = (given: typeof network) => solveNetwork(given, 1).pressureDrop;
  const long = { ...network, supply: longer(network.supply), return: longer(network.return!) };
  assertAlmostEquals(drop(long) - drop(network), 2 * 0.319042, 1e-5);
  assertAlmostEquals(
    drop({ ...network, supply: longer(network.supply) }) - drop(network),
    0.319042,
    1e-5,
  );
});
