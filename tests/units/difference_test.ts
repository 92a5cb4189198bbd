import { assert, assertEquals } from "@std/assert";
import { readsAsTemperature } from "winterground/units/mod.ts";

/** K, the largest difference usual in the field of the cases. */
const MOST = 15;

Deno.test("readsAsTemperature() names a temperature that stands where a difference belongs", () => {
  // Property: degC, and degF beyond what is usual, are temperatures: both temperature and difference are named
  const said = readsAsTemperature("80 degF", MOST);
  assert(said !== undefined);
  for (const part of ["80 degF", "26.7 degC", "44.4 K", "5 K", "9 degF"]) {
    assert(said.includes(part), `${part} in: ${said}`);
  }
  for (const text of ["20 degC", "5 °C", "5 C", "80 °F", "80 F", "-20 degF", "28 degF"]) {
    assert(readsAsTemperature(text, MOST) !== undefined, text);
  }
});

Deno.test("readsAsTemperature() lets differences pass", () => {
  // Property: kelvin is always a difference, and so is a usual one in degF
  for (const text of ["5 K", "44 K", "9 degF", "27 degF", "9 °F", "9 F", "0 K", 5, "5", "5 kg"]) {
    assertEquals(readsAsTemperature(text, MOST), undefined, String(text));
  }
});
