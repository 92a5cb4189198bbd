import { assert, assertAlmostEquals, assertLess } from "@std/assert";
import fc from "fast-check";
import { latentContent, settleLumps } from "../../lib/soil/mod.ts";

Deno.test("settleLumps() leaves content and temperature together at the step's end, heat kept", () => {
  // Property: T = free + R·s and content(T) = content − s·Δt, whatever the start, step and lumps
  const three = (low: number, high: number) =>
    fc.tuple(...[0, 1, 2].map(() => fc.double({ min: low, max: high, noNaN: true })));
  fc.assert(fc.property(
    three(-3, 1),
    three(0, 1),
    three(1e5, 1e8),
    fc.double({ min: 300, max: 3600, noNaN: true }),
    (temperatures, shares, latents, seconds) => {
      const lumps = {
        latent: Float64Array.from(latents),
        range: Float64Array.of(0.2, 0.5, 1),
      };
      const response = Float64Array.of(2e-3, 5e-4, 1e-4, 5e-4, 1e-3, 3e-4, 1e-4, 3e-4, 3e-3);
      const before = Float64Array.from(latents, (latent, k) => -latent * shares[k]!);
      const state = { content: before.slice(), power: new Float64Array(3) };
      const free = Float64Array.from(temperatures);
      settleLumps({ lumps, seconds, response }, state, free, 0, Int32Array.of(0, 1, 2), 3);
      for (let k = 0; k < 3; k++) {
        const moved = before[k]! - state.content[k]!;
        assertAlmostEquals(moved, state.power[k]! * seconds, 1e-9 * latents[k]!, "heat");
        assert(state.content[k]! <= 0 && state.content[k]! >= -latents[k]! * (1 + 1e-9));
        let temperature = free[k]!;
        for (let j = 0; j < 3; j++) temperature += response[3 * k + j]! * state.power[j]!;
        // the search ends within a hundredth of a kelvin
        const [low, high] = [-0.03, 0.03].map((off) =>
          latentContent(latents[k]!, lumps.range[k]!, temperature + off)
        ) as [number, number];
        assert(
          state.content[k]! >= low - 1e-6 * latents[k]! &&
            state.content[k]! <= high + 1e-6 * latents[k]!,
          `lump ${k}: ${state.content[k]} at ${temperature} degC, expected ${low} to ${high}`,
        );
      }
    },
  ));
});

Deno.test("settleLumps() thaws to exactly nothing", () => {
  // Property: no rest of ice stays behind, and its heat is booked
  const lumps = { latent: Float64Array.of(1e6), range: Float64Array.of(0.5) };
  const state = { content: Float64Array.of(-1234.5), power: new Float64Array(1) };
  const step = { lumps, seconds: 900, response: Float64Array.of(1e-3) };
  settleLumps(step, state, Float64Array.of(4), 0, Int32Array.of(0), 1);
  assert(state.content[0] === 0);
  assertLess(Math.abs(state.power[0]! * 900 + 1234.5), 1e-9);
});
