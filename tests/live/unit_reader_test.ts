import { assertAlmostEquals, assertThrows } from "@std/assert";
import { unitTable } from "winterground/live/build/unit_table.ts";
import { unitReader } from "winterground/live/read/unit_reader.ts";
import { KINDS } from "winterground/units/mod.ts";
import { spellUnit } from "winterground/units/spell_unit.ts";
import { withUnit } from "winterground/units/unit_library.ts";

const read = unitReader(JSON.parse(JSON.stringify(unitTable())));

/** Units that climate files and places are written in. */
const WRITTEN: readonly (readonly [string, string])[] = [
  ["degF", "degC"],
  ["degC", "K"],
  ["K", "degF"],
  ["ft", "m"],
  ["km", "m"],
  ["mph", "m/s"],
  ["km/h", "m/s"],
  ["Btu/(h ft2)", "W/m2"],
  ["MJ/(m2 h)", "W/m^2"],
  ["J/(cm2 h)", "W/m2"],
  ["kW/m2", "W/m2"],
  ["psi", "Pa"],
  ["atm", "Pa"],
  ["mmHg", "kPa"],
  ["h", "s"],
  ["min", "s"],
];

Deno.test("a page reads units as the unit library does", () => {
  // Source: mathjs, on the units of every kind of quantity and on those of climate files
  const kinds = Object.values(KINDS).filter(({ si }) => si !== "")
    .map(({ si, us }) => [us, si] as const);
  for (const [from, to] of [...WRITTEN, ...kinds].map((pair) => pair.map(spellUnit))) {
    for (const value of [0, 1, -3.7, 1234.5]) {
      const expected = withUnit(value, from!).toNumber(to!);
      const found = read(value, from!).toNumber(to!);
      assertAlmostEquals(found, expected, 1e-12 * Math.max(1, Math.abs(expected)), `${from} ${to}`);
    }
  }
});

Deno.test("what is no unit is refused by both, and so is a unit of another kind", () => {
  // Property: the same texts
  for (
    const text of ["", "m/", "furl", "(m", "m)", "m//s", "m (", "/s", "m ^", "m/(s", "5 m", "m,s"]
  ) {
    assertThrows(() => withUnit(1, text).toNumber(text));
    assertThrows(() => read(1, text), SyntaxError);
  }
  assertThrows(() => read(1, "m").toNumber("s"), RangeError);
  assertThrows(() => withUnit(1, "m").toNumber("s"));
});
