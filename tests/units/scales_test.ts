import { assert, assertEquals } from "@std/assert";
import { displayUnit, type Kind, kindOf, KINDS } from "../../lib/units/mod.ts";
import { withUnit } from "../../lib/units/unit_library.ts";

Deno.test("the units that values are shown in have the sizes of the units people write", () => {
  // Source: the unit tables of mathjs, twelve figures, for every kind that is shown
  let seen = 0;
  for (const name of Object.keys(KINDS) as Kind[]) {
    const { si: inside, shown, difference } = kindOf(name);
    const scales = displayUnit(name);
    for (const system of ["si", "us"] as const) {
      const unit = shown[system]?.[0];
      if (unit === undefined || unit === "" || unit === inside) continue;
      const convert = (value: number) => withUnit(value, inside).toNumber(unit);
      const clean = (value: number) => Number(value.toPrecision(12));
      const zero = convert(0);
      assertEquals(
        [scales[system]!.factor, scales[system]!.offset],
        [clean(convert(1) - zero), difference === true ? 0 : clean(zero)],
        `${name} in ${unit}`,
      );
      seen++;
    }
  }
  assert(seen > 30, `only ${seen} units seen`);
});
