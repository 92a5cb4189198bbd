import { assertEquals } from "@std/assert";
import { usualCurtain } from "../../../lib/house/mod.ts";
import { parseQuantity } from "../../../lib/units/mod.ts";
import { fieldKind, fieldRow } from "../../../lib/study/file/fields.ts";

Deno.test("the curtain tried where there is none is the one a study gets by default", () => {
  // Property: one set of values, in data/studies/fields.csv and in the house
  const { closeBelowOutside, ...usual } = usualCurtain(4);
  for (const [name, value] of Object.entries(usual)) {
    const key = `house.curtain.${name}`;
    assertEquals(parseQuantity(fieldRow(key).default, fieldKind(key)), value, key);
  }
  assertEquals(closeBelowOutside, 9);
});
