import { assertAlmostEquals } from "@std/assert";
import {
  findJunctions,
  inletLoss,
  junctionRise,
  orificeLoss,
  reentrantInletLoss,
  roundedInletLoss,
  stubObstruction,
} from "../../lib/headers/mod.ts";
import { reentrantInletLossRennels, roundedInletLossRennels } from "../support/inlet_losses.ts";
import {
  convergingBranchLoss,
  convergingRunLoss,
  divergingBranchLoss,
  divergingRunLoss,
} from "../support/tees.ts";

Deno.test("converging tee gives K −0.04026 and 0.3258 (Crane TP-410 example 7-35)", () => {
  // Source: Crane TP-410 2009 [crane-tp410-2009] example 7-35, 1135 L/min run, 380 L/min 90°
  // branch; 0.001
  const tee = { runDiameter: 0.1, branchDiameter: 0.1, runFlow: 1135, branchFlow: 380, angle: 90 };
  assertAlmostEquals(convergingBranchLoss(tee), -0.04026, 0.001);
  assertAlmostEquals(convergingRunLoss(tee), 0.3258, 0.001);
});

Deno.test("diverging tee gives K 0.4640 and −0.06809 (Crane TP-410 example 7-36)", () => {
  // Source: Crane TP-410 2009 [crane-tp410-2009] example 7-36, 1515 L/min run, 950 L/min 45°
  // branch; 0.001
  const tee = {
    runDiameter: 0.15,
    branchDiameter: 0.15,
    runFlow: 1515,
    branchFlow: 950,
    angle: 45,
  };
  assertAlmostEquals(divergingBranchLoss(tee), 0.4640, 0.001);
  assertAlmostEquals(divergingRunLoss(tee), -0.06809, 0.001);
});

Deno.test("tees give the further points of the fluids library's test suite", () => {
  // Source: test suite of the fluids library [fluids-2016] (Crane TP-410 [crane-tp410-2009]); last
  // digit
  const converging = { runDiameter: 1, branchDiameter: 1, runFlow: 0.018917, branchFlow: 0.0133 };
  assertAlmostEquals(convergingBranchLoss({ ...converging, angle: 45 }), 0.1323179, 1e-6);
  assertAlmostEquals(convergingBranchLoss({ ...converging, angle: 90 }), 0.2644825, 1e-6);
  const diverging = { runDiameter: 1, branchDiameter: 1, runFlow: 0.02525, branchFlow: 0.01583 };
  assertAlmostEquals(divergingBranchLoss({ ...diverging, angle: 90 }), 1.0910792, 1e-6);
});

Deno.test('junction model "tees" gives the static change of Crane\'s run coefficients', () => {
  // Source: Crane TP-410 2009 [crane-tp410-2009] run coefficients; exact rewriting, branch area up
  // to 0.4 of the run
  const model = { ...findJunctions("tees"), density: 2 };
  for (const share of [0.05, 0.3, 0.8, 1]) {
    const after = 1 - share;
    const sizes = { runDiameter: 1, branchDiameter: 0.5, angle: 90 };
    const out = divergingRunLoss({ ...sizes, runFlow: after, branchFlow: share });
    assertAlmostEquals(junctionRise(1, after, true, model), 1 - after ** 2 - out, 1e-12);
    const joined = convergingRunLoss({ ...sizes, runFlow: after, branchFlow: share });
    assertAlmostEquals(junctionRise(after, 1, false, model), after ** 2 - 1 - joined, 1e-12);
  }
});

Deno.test("reentrantInletLoss() gives Idelchik's points, 1.0 for a thin wall and 0.5 for a thick one", () => {
  // Source: Idelchik [idelchik-1994] diagram 3-1 as quoted by the fluids library [fluids-2016];
  // exact points
  const depths = [0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5];
  const thin = [0.57, 0.63, 0.68, 0.73, 0.80, 0.86, 0.92, 0.97, 1.00];
  const medium = [0.51, 0.51, 0.52, 0.53, 0.55, 0.60, 0.66, 0.69, 0.72];
  depths.forEach((depth, i) => {
    assertAlmostEquals(reentrantInletLoss(depth, 0), thin[i]!, 1e-12);
    assertAlmostEquals(reentrantInletLoss(depth, 0.02), medium[i]!, 1e-12);
    assertAlmostEquals(reentrantInletLoss(depth, 0.05), 0.5, 1e-12);
  });
  assertAlmostEquals(reentrantInletLoss(3, 0), 1, 1e-12);
  assertAlmostEquals(inletLoss("flush", { insertion: 0, wall: 0 }), 0.5, 1e-12);
});

Deno.test("reentrantInletLoss() gives Idelchik's points for walls of 0.008 to 0.04 (Modelica Standard Library)", () => {
  // Source: Idelchik 1994 [idelchik-1994] diagram 3-1, p. 160, as quoted by the Modelica Standard
  // Library [modelica-library-2020]; exact
  const depths = [0, 0.005, 0.02, 0.1, 0.5];
  const rows: readonly [number, readonly number[]][] = [
    [0.008, [0.50, 0.55, 0.62, 0.74, 0.88]],
    [0.016, [0.50, 0.51, 0.55, 0.64, 0.77]],
    [0.024, [0.50, 0.50, 0.52, 0.58, 0.68]],
    [0.040, [0.50, 0.50, 0.51, 0.51, 0.54]],
  ];
  for (const [wall, losses] of rows) {
    depths.forEach((depth, i) =>
      assertAlmostEquals(reentrantInletLoss(depth, wall), losses[i]!, 1e-12)
    );
  }
});

Deno.test("orificeLoss() gives [1 − φ + 0.707·(1 − φ)^0.375]²/φ²: 4.37 at half the area (Idelchik diagram 4-14)", () => {
  // Source: Idelchik 1994 [idelchik-1994] diagram 4-14, p. 221, formula as quoted by the Modelica
  // Standard Library [modelica-library-2020], recomputed: φ 0.5 → (0.5 + 0.707·0.77111)²/0.25
  assertAlmostEquals(orificeLoss(0.5), (0.5 + 0.707 * 0.77110541) ** 2 / 0.25, 1e-6);
  assertAlmostEquals(orificeLoss(0.5), 4.37, 0.005);
  assertAlmostEquals(orificeLoss(1), 0, 1e-12);
});

Deno.test("reentrantInletLossRennels() gives 1.01541 for a wall of 0.005 (Rennels 2012)", () => {
  // Source: Rennels & Hudson 2012 [rennels-hudson-2012] as quoted by the fluids library
  // [fluids-2016]: 1.01541 at τ 0.005
  assertAlmostEquals(reentrantInletLossRennels(0.005), 1.01541, 1e-5);
});

Deno.test("roundedInletLoss() gives Idelchik's points and lies within 0.1 of Crane's", () => {
  // Source: Idelchik [idelchik-1994] diagram 3-4; Crane TP-410 [crane-tp410-2009] rounded inlets,
  // both as quoted by the fluids library [fluids-2016]
  const idelchik = [
    [0.01, 0.44],
    [0.02, 0.37],
    [0.03, 0.31],
    [0.04, 0.26],
    [0.05, 0.22],
    [0.06, 0.20],
    [0.08, 0.15],
    [0.12, 0.09],
    [0.16, 0.06],
    [0.2, 0.03],
  ];
  for (const [radius, loss] of idelchik) {
    assertAlmostEquals(roundedInletLoss(radius!), loss!, 1e-12);
  }
  const crane = [[0.02, 0.28], [0.04, 0.24], [0.06, 0.15], [0.10, 0.09], [0.15, 0.04]];
  for (const [radius, loss] of crane) assertAlmostEquals(roundedInletLoss(radius!), loss!, 0.1);
});

Deno.test("roundedInletLossRennels() gives 0.57 sharp and 0.0983953 at r/D 0.235 (Rennels 2012)", () => {
  // Source: Rennels & Hudson 2012 [rennels-hudson-2012] as quoted by the fluids library's test
  // suite [fluids-2016]; last digit
  assertAlmostEquals(roundedInletLossRennels(0), 0.57, 0.005);
  assertAlmostEquals(roundedInletLossRennels(0.235), 0.0983953, 0.6e-7);
});

Deno.test("stubObstruction() blocks 23 % of a 10-inch header with a 4-inch end pushed in 100 mm", () => {
  // Source: recomputed: 118 mm × 100 mm over π/4·(254 mm)²
  const { blocked } = stubObstruction({
    outsideDiameter: 0.118,
    insertion: 0.1,
    headerDiameter: 0.254,
  });
  assertAlmostEquals(blocked, 0.23, 0.005);
});
