import { assertEquals } from "@std/assert";
import { type ControlSight, type ControlState, decideMode } from "../../lib/store/control.ts";
import { allowedByHour } from "../../lib/store/season.ts";
import { undisturbedTemperature } from "../../lib/soil/mod.ts";
import { STORE_INPUTS } from "./stand_in.ts";

const rest: ControlSight = {
  allowed: "both",
  intake: 10,
  store: 12,
  air: 10,
  humidity: 0.7,
  vents: 0,
};
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

Deno.test("decideMode() makes no whole step more of a minimum run that is a millionth longer than its steps", () => {
  // Property: continuity: two steps of 300 s are the 10 minutes of a clock that counts seconds
  const warm = { ...rest, intake: 30, air: 28, store: 18 };
  const cold = { ...rest, intake: 18, air: 18, store: 18 };
  const modes = (minimumRun: number) => {
    const [inputs, state] = [{ ...STORE_INPUTS, minimumRun }, settled()];
    return [warm, cold, cold, cold].map((sight) => decideMode(inputs, state, sight, 300));
  };
  assertEquals(modes(600), [1, 1, 0, 0]);
  assertEquals(modes(600 * (1 + 1e-6)), modes(600));
  assertEquals(modes(602), [1, 1, 1, 0]);
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

Deno.test("decideMode() charges up to the highest store temperature, and again a kelvin below it", () => {
  // Property: hysteresis about the limit; discharge is not touched
  const inputs = { ...STORE_INPUTS, maximumStore: 24 };
  const state = settled();
  const at = (store: number) =>
    decideMode(inputs, state, { ...rest, intake: 40, air: 30, store }, 900);
  assertEquals(at(22), 1);
  assertEquals(at(23.9), 1);
  assertEquals(at(24), 0);
  assertEquals(at(23.5), 0); // within the band
  assertEquals(at(22.9), 1);
  const cold = { ...rest, intake: 5, air: 5, store: 30 };
  assertEquals(decideMode(inputs, settled(), cold, 900), -1);
});

Deno.test("decideMode() neither charges nor runs out of season, and stops at once", () => {
  // Property: season before thermostat and before the shortest run
  const hot: ControlSight = { ...rest, intake: 40, air: 30, store: 18 };
  const cold: ControlSight = { ...rest, intake: 5, air: 5, store: 18 };
  assertEquals(decideMode(STORE_INPUTS, settled(), { ...hot, allowed: "discharge" }, 900), 0);
  assertEquals(decideMode(STORE_INPUTS, settled(), { ...cold, allowed: "discharge" }, 900), -1);
  assertEquals(decideMode(STORE_INPUTS, settled(), { ...cold, allowed: "nothing" }, 900), 0);
  const running: ControlState = { mode: -1, lasted: 0 };
  assertEquals(decideMode(STORE_INPUTS, running, { ...cold, allowed: "nothing" }, 900), 0);
});

Deno.test("allowedByHour() follows the days of the study and the undisturbed ground", () => {
  // Property: 20 h of 15 August is in the season, 1 May is not; ground at 1 m by the wave itself
  const wave = { mean: 8, amplitude: 12, minimumDay: 25, diffusivity: 6e-7 };
  const at = (hours: readonly string[], month: number, day: number) =>
    hours[24 * [0, 31, 59, 90, 120, 151, 181, 212][month - 1]! + 24 * (day - 1) + 20];
  const inputs = { ...STORE_INPUTS, chargeSeason: "15 Aug to 30 Apr" };
  const charged = allowedByHour(inputs, wave, 1);
  assertEquals([at(charged, 8, 15), at(charged, 5, 1), at(charged, 4, 30)], [
    "both",
    "discharge",
    "both",
  ]);
  const off = allowedByHour({ ...inputs, fanSeason: "1 Sep to 31 May" }, wave, 1);
  assertEquals([at(off, 7, 1), at(off, 5, 20), at(off, 1, 1)], ["nothing", "discharge", "both"]);
  const cool = allowedByHour({ ...STORE_INPUTS, chargeBelowGround: 10 }, wave, 1);
  cool.forEach((allowed, hour) => {
    const ground = undisturbedTemperature(wave, 1, Math.floor(hour / 24) + 0.5);
    assertEquals(allowed, ground <= 10 ? "both" : "discharge");
  });
});
