import { assertEquals } from "@std/assert";
import { type ControlState, decideMode } from "../../lib/store/control.ts";
import { STORE_INPUTS } from "./stand_in.ts";

const rest = { intake: 10, store: 12, air: 10, humidity: 0.7, vents: 0 };
const settled = (): ControlState => ({ mode: 0, lasted: Infinity });

Deno.test("decideMode() starts charging at the upper and stops at the lower difference", () => {
  // Property: hysteresis
  const state = settled();
  const at = (intake: number) =>
    decideMode(STORE_INPUTS, state, { ...rest, intake, air: intake - 2, store: 18 }, 900);
  assertEquals(at(22), 0); // 4 K
  assertEquals(at(23.5), 1); // 5.5 K
  assertEquals(at(21), 1); // 3 K, still on
  assertEquals(at(19.5), 0); // 1.5 K
});

Deno.test("decideMode() keeps a mode for the minimum run", () => {
  // Property: no switching within minimumRun
  const inputs = { ...STORE_INPUTS, minimumRun: 1800 };
  const state = settled();
  const warm = { ...rest, intake: 30, air: 28, store: 18 };
  const cold = { ...rest, intake: 18, air: 18, store: 18 };
  assertEquals(decideMode(inputs, state, warm, 900), 1);
  assertEquals(decideMode(inputs, state, cold, 900), 1);
  assertEquals(decideMode(inputs, state, cold, 900), 0);
});

Deno.test("decideMode() holds discharge back in damp air unless it is near freezing", () => {
  // Property: humidity lock-out
  const damp = { ...rest, intake: 5, air: 5, store: 14, humidity: 0.99 };
  assertEquals(decideMode(STORE_INPUTS, settled(), damp, 900), 0);
  assertEquals(decideMode(STORE_INPUTS, settled(), { ...damp, humidity: 0.9 }, 900), -1);
  assertEquals(decideMode(STORE_INPUTS, settled(), { ...damp, air: 1 }, 900), -1);
});

Deno.test("decideMode() leaves the vents first where the study says so", () => {
  // Property: vents first
  const hot = { ...rest, intake: 32, air: 30, store: 18, vents: 0.4 };
  assertEquals(decideMode(STORE_INPUTS, settled(), hot, 900), 1);
  assertEquals(decideMode({ ...STORE_INPUTS, ventsFirst: true }, settled(), hot, 900), 0);
});

Deno.test("decideMode() starts discharging at the upper and stops at the lower difference", () => {
  // Property: hysteresis: 3 K to start, 1.5 K to stop, below 8 degC; no discharge from a colder store
  const state = settled();
  const at = (store: number, air = 5) =>
    decideMode(STORE_INPUTS, state, { ...rest, intake: air, air, store }, 900);
  assertEquals(at(7.5), 0); // 2.5 K
  assertEquals(at(8.5), -1); // 3.5 K
  assertEquals(at(7), -1); // 2 K, still on
  assertEquals(at(6), 0); // 1 K
  assertEquals(at(2), 0); // the store is the colder
  assertEquals(at(13, 9), 0); // 4 K, but the house is above the limit
  assertEquals(at(13, 7.5), -1);
  assertEquals(at(13, 9), -1); // above it by less than the band
  assertEquals(at(14, 9.6), 0);
});
