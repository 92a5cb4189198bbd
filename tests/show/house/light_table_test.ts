import { assert } from "@std/assert";
import { lightTable } from "../../../lib/show/house/mod.ts";

Deno.test("lightTable() gives the light let in and the shares of it by month", () => {
  // Property: the shares of the made-up month, in words
  const inside = [{
    month: 11,
    letIn: 200,
    crop: 80,
    floor: 30,
    mass: 10,
    air: 50,
    out: 26,
    throughSolid: 4,
  }];
  const shown = JSON.stringify(lightTable({ inside }));
  for (const words of ["Dec", "200", "40", "25", "13", "out through the glazing"]) {
    assert(shown.includes(words), words);
  }
});
