import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { edgeLoss } from "../../../lib/house/mod.ts";
import { storeSite } from "../../../lib/store/site.ts";
import { factorShifted, solveBanded } from "../../../lib/store/solver/reduced/banded_cholesky.ts";
import { standInRequest } from "../stand_in.ts";

const FLOOR_FILM = 8;
const FLOOR_AREA = 72;
const site = (change: Parameters<typeof standInRequest>[0] = {}) =>
  storeSite(standInRequest(change), FLOOR_FILM, FLOOR_AREA);

/** Film coefficient times perimeter, W/(m K), of the first tube, from what a segment exchanges. */
function filmOf({ field }: ReturnType<typeof site>): number {
  const rate = field.heatRate[0]!;
  const units = -Math.log(1 - field.sensible[0]! * field.segment / rate);
  return units * rate / field.segment;
}

Deno.test("storeSite() carries air by volume times density, heat by 1006 and 1860 J/(kg K)", () => {
  // Property: hand arithmetic: 0.45 m³/s of 1.15 kg/m³, 6 g of vapour a kilogram
  const { airRate, heatRate, field } = site();
  assertAlmostEquals(airRate, 0.5175, 1e-12);
  assertAlmostEquals(heatRate, 0.5175 * (1006 + 0.006 * 1860), 1e-9);
  const modelled = field.heatRate.reduce((sum, rate) => sum + rate, 0) * field.copies;
  assertAlmostEquals(modelled, heatRate, 1e-9, "all tubes together");
});

Deno.test("storeSite() raises the film with the flow to the power 0.8 (Dittus & Boelter 1930)", () => {
  // Source: Dittus & Boelter 1930 [dittus-boelter-1930]: Nu grows with Re^0.8: 1.7411 times at
  // twice the flow; 14 W/(m² K) on 0.1 m of diameter at the design flow
  const request = standInRequest();
  const doubled = { ...request, fan: { ...request.fan, airFlow: 2 * request.fan.airFlow } };
  const [one, two] = [request, doubled].map((given) =>
    filmOf(storeSite(given, FLOOR_FILM, FLOOR_AREA))
  );
  assertAlmostEquals(one!, 14 * Math.PI * 0.1, 1e-9);
  assertAlmostEquals(two! / one!, 1.7411, 0.0001);
});

Deno.test("half a slice stands for the whole: same soil, same tubes, same air", () => {
  // Property: symmetry; tubes whose flows do not mirror need the whole slice
  const uneven = Array.from({ length: 20 }, (_, k) => k % 10 < 5 ? 0.8 : 1.2);
  const [half, whole] = [site(), site({ shares: uneven })];
  assertEquals([half.field.copies, whole.field.copies], [2, 1]);
  const content = ({ operator, lengths }: typeof half) =>
    operator.capacity.reduce((sum, value) => sum + value, 0) *
    lengths.reduce((sum, value) => sum + value, 0);
  assertAlmostEquals(content(half) / content(whole), 1, 1e-9, "J/K of all soil");
  const floor = ({ operator, lengths }: typeof half) =>
    operator.floor.conductances.reduce((sum, value) => sum + value, 0) *
    lengths.reduce((sum, value) => sum + value, 0);
  assertAlmostEquals(floor(half) / floor(whole), 1, 1e-9, "W/K of the floor");
  const wall = ({ field, operator }: typeof half) =>
    operator.tubes.reduce((sum, tube) => sum + tube.part, 0) * field.copies * field.segment *
    field.slices;
  assertAlmostEquals(wall(half), 20 * 11, 1e-9, "m of tube");
  assertAlmostEquals(wall(whole), 20 * 11, 1e-9, "m of tube");
  assertAlmostEquals(
    half.lengths.reduce((sum, value) => sum + value, 0),
    2 * 12,
    1e-9,
    "m of house",
  );
});

Deno.test("an edge board takes its share of the conductance from floor to outside", () => {
  // Property: a board in the way lowers a conductance, and none is raised
  const [bare, board] = [site({ house: { edgeInsulation: 0 } }), site()];
  const across = ({ operator }: typeof bare) =>
    operator.sideways.reduce((sum, value) => sum + value, 0);
  assert(across(board) < across(bare), `${across(board)} ${across(bare)}`);
});

/** W/K through the ground from the floor to the surface outside, steady. */
function steadyLoss({ operator, lengths }: ReturnType<typeof site>): number {
  const factor = factorShifted(operator, 0);
  const right = new Float64Array(operator.capacity.length);
  const { cells, conductances } = operator.floor;
  cells.forEach((cell, k) => right[cell] = conductances[k]!);
  const field = solveBanded(factor, right);
  const perMetre = cells.reduce((sum, cell, k) => sum + conductances[k]! * (1 - field[cell]!), 0);
  return perMetre * lengths.reduce((sum, length) => sum + length, 0);
}

Deno.test("a wing of edge insulation holds heat back, the more the wider, as in the house chapter", () => {
  // Property: direction; the share saved within a tenth of the loss of the house chapter's
  // own section of the edge
  const loss = (wing: number, depth = 0.6) =>
    steadyLoss(site({ house: { edgeInsulationWing: wing, edgeInsulationDepth: depth } }));
  const section = (wing: number, depth = 0.6) =>
    edgeLoss({ floorArea: FLOOR_AREA, perimeter: 36 }, {
      edgeInsulation: 1.8,
      edgeInsulationDepth: depth,
      edgeInsulationWing: wing,
    }, standInRequest().soil.properties.conductivity).perMetre;
  for (const depth of [0, 0.6]) {
    const [none, half, whole] = [0, 0.6, 1.2].map((wing) => loss(wing, depth));
    assert(whole! < half! && half! < none!, `${whole} ${half} ${none}`);
    const saved = section(1.2, depth) / section(0, depth);
    assertAlmostEquals(whole! / none!, saved, 0.1, `depth ${depth}`);
  }
  const bare = { edgeInsulation: 0, edgeInsulationDepth: 0 };
  const nothing = site({ house: { ...bare, edgeInsulationWing: 1 } });
  assertAlmostEquals(steadyLoss(nothing), steadyLoss(site({ house: bare })), 1e-9, "no resistance");
});
