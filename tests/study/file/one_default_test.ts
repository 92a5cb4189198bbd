import { assertAlmostEquals, assertEquals } from "@std/assert";
import { usualCurtain } from "../../../lib/house/mod.ts";
import { usualCollector } from "../../../lib/store/mod.ts";
import { WASHED_GRAVEL } from "../../../lib/store/variants/variants.ts";
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

Deno.test("the plate collector tried where there is none is the one a study gets by default", () => {
  // Property: one set of values, in data/studies/fields.csv and in the store
  const { area, place, azimuth, cover, ...usual } = usualCollector(9);
  assertEquals([area, azimuth, place, cover], [
    9,
    undefined,
    fieldRow("store.collector.place").default,
    fieldRow("store.collector.cover").default,
  ]);
  assertEquals(fieldRow("store.collector.azimuth").default, "facing");
  for (const [name, value] of Object.entries(usual)) {
    const key = `store.collector.${name}`;
    const given = parseQuantity(fieldRow(key).default, fieldKind(key));
    assertAlmostEquals(given, value, 1e-12, key);
  }
});

Deno.test("the gravel bed tried round the tubes is the one a study gets by default", () => {
  // Property: one set of values, in data/studies/fields.csv and in the store
  for (const [name, value] of Object.entries(WASHED_GRAVEL)) {
    const key = `store.gravelBed.${name}`;
    assertAlmostEquals(parseQuantity(fieldRow(key).default, fieldKind(key)), value, 1e-9, key);
  }
});
