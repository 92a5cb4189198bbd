import { assert, assertEquals } from "@std/assert";
import { freezingText, frostLight } from "../../../lib/show/house/frost_words.ts";

Deno.test("frostLight() says yes only where no hour freezes, no above a twentieth of the year", () => {
  // Property: the limits the documentation states
  assertEquals(frostLight(0), "yes");
  assertEquals(frostLight(1), "partly");
  assertEquals(frostLight(437), "partly");
  assertEquals(frostLight(438), "no");
});

Deno.test("freezingText() says so where a kelvin colder would not freeze either", () => {
  // Property: words follow the numbers
  assertEquals(freezingText({ warmer: 0, colder: 0 }).includes("not freeze in either case"), true);
  const both = freezingText({ warmer: 1100, colder: 1500 }).replaceAll(/[\u00a0\u202f]/g, " ");
  assert(both.includes("1100 h to 1500 h"), both);
});
