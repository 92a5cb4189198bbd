import { assert, assertAlmostEquals, assertThrows } from "@std/assert";
import { InputError } from "../../../lib/basics/mod.ts";
import {
  findWall,
  layerResistance,
  layersTransmittance,
  WALL_MATERIALS,
  WALLS,
} from "../../../lib/house/mod.ts";

Deno.test("layersTransmittance() adds resistances as ISO 6946 does", () => {
  // Source: ISO 6946 [iso-6946-2017]: R_si 0.13, R_se 0.04, layers d/λ; recomputed by hand.
  const wall = [{ material: "plywood", thickness: 0.012 }, {
    material: "mineral-wool",
    thickness: 0.14,
  }, { material: "plywood", thickness: 0.012 }];
  const hand = 1 / (0.13 + 2 * 0.012 / 0.13 + 0.14 / 0.045 + 0.04);
  assertAlmostEquals(layersTransmittance(wall), hand, 1e-12);
  assertAlmostEquals(findWall("timber-wool-140").heatTransmittance, hand, 1e-12);
});

Deno.test("two inches of closed-cell board are R-10 (common trade figure)", () => {
  // Source: R-5 an inch, extension leaflets; 10 h ft² degF/Btu = 1.761 m² K/W; one digit.
  const board = layerResistance({ material: "closed-cell-board", thickness: 0.0508 });
  assertAlmostEquals(board, 1.761, 0.05);
});

Deno.test("walls name their sources and have plausible transmittances", () => {
  // Property: limits of the quantities
  for (const wall of WALLS) {
    assert(wall.heatTransmittance > 0.1 && wall.heatTransmittance < 5, wall.id);
    assert(wall.source.length > 5, wall.id);
  }
  for (const material of WALL_MATERIALS) assert(material.source.length > 5, material.id);
  assertThrows(() => findWall("paper"), InputError, "board-50");
  assertThrows(() => layerResistance({ material: "ice", thickness: 1 }), InputError, "plywood");
});
