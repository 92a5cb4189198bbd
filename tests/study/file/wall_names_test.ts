import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { findWall, houseFields } from "../../../lib/house/mod.ts";
import { fieldSchema } from "../../../lib/study/file/field_schema.ts";

const northWall = fieldSchema("house.northWall", houseFields.northWall);
const kneeWall = fieldSchema("house.kneeWall", houseFields.kneeWall);

Deno.test("a wall in a study may be a U-value, a wall of data/walls, or glazed", () => {
  // Property: three ways to say a wall
  assertAlmostEquals(northWall.parse("0.3 W/(m2 K)") as number, 0.3, 1e-12);
  assertEquals(northWall.parse("glazed"), "glazed");
  assertEquals(
    northWall.parse("timber-wool-140"),
    findWall("timber-wool-140").heatTransmittance,
  );
  assertEquals(kneeWall.parse("board-50"), findWall("board-50").heatTransmittance);
});

Deno.test("an unknown wall is refused with the known ones named", () => {
  // Property: bad input
  const result = northWall.safeParse("paper");
  assert(!result.success);
  assert(result.error.message.includes("board-50"), result.error.message);
});
