import { assertAlmostEquals } from "@std/assert";
import { estimates, meansOfReadings, propagate } from "../../lib/measured/mod.ts";

/** Resistance, reactance and impedance from voltage, current and phase. */
const circuit = ([voltage, current, phase]: readonly number[]) => {
  const impedance = voltage! / current!;
  return [impedance * Math.cos(phase!), impedance * Math.sin(phase!), impedance];
};

Deno.test("propagate(): resistance and reactance measured at once (GUM annex H.2)", () => {
  // Source: JCGM 100:2008, tables H.2 to H.4; the readings from memory, their means and
  // correlations are those printed
  const inputs = meansOfReadings([
    [5.007, 4.994, 5.005, 4.99, 4.999],
    [19.663e-3, 19.639e-3, 19.64e-3, 19.685e-3, 19.678e-3],
    [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
  ]);
  const near = (found: number, printed: number, decimals: number) =>
    assertAlmostEquals(found, printed, 0.5001 * 10 ** -decimals);
  near(inputs.values[0]!, 4.999, 4);
  near(inputs.values[1]!, 19.661e-3, 7);
  near(inputs.values[2]!, 1.04446, 5);
  near(inputs.uncertainties[0]!, 0.0032, 4);
  near(inputs.uncertainties[1]!, 0.0095e-3, 7);
  near(inputs.uncertainties[2]!, 0.00075, 5);
  near(inputs.correlation[0]![1]!, -0.36, 2);
  near(inputs.correlation[0]![2]!, 0.86, 2);
  near(inputs.correlation[1]![2]!, -0.65, 2);
  const found = propagate(inputs, circuit);
  [127.732, 219.847, 254.26].forEach((value, i) => near(found.values[i]!, value, 3));
  near(found.uncertainties[0]!, 0.071, 3);
  near(found.uncertainties[2]!, 0.236, 3);
  // printed 0.295; unrounded it is 0.2956, so one unit of the last digit is allowed here
  assertAlmostEquals(found.uncertainties[1]!, 0.295, 0.001);
  near(found.correlation[0]![1]!, -0.588, 3);
  near(found.correlation[0]![2]!, -0.485, 3);
  near(found.correlation[1]![2]!, 0.993, 3);
});

Deno.test("propagate(): the same from rounded uncertainties and correlations", () => {
  // Source: JCGM 100:2008, table H.2 as printed; linear propagation worked by hand from it
  const inputs = estimates([4.999, 19.661e-3, 1.04446], [3.2e-3, 9.5e-6, 7.5e-4], [
    [1, -0.36, 0.86],
    [-0.36, 1, -0.65],
    [0.86, -0.65, 1],
  ]);
  const found = propagate(inputs, circuit);
  [0.07, 0.2957, 0.2366].forEach((value, i) =>
    assertAlmostEquals(found.uncertainties[i]!, value, 0.00006)
  );
  assertAlmostEquals(found.correlation[0]![1]!, -0.591, 0.0006);
});
