import { assert, assertAlmostEquals } from "@std/assert";
import {
  GROUND_CLASSES,
  PALETTE,
  RADIATION_CLASSES,
  TEMPERATURE_CLASSES,
} from "../../../lib/show/kit/palette.ts";
import { contrast, luminance, oklabDistance, seenWith, SIMULATIONS } from "./colour_vision.ts";

const colours = Object.entries(PALETTE);

Deno.test("contrast() of black on white is 21:1 (WCAG 2.1, definition of contrast ratio)", () => {
  // Source: WCAG 2.1 [wcag-2023], definition of contrast ratio: black on white is 21:1
  assertAlmostEquals(contrast("#000000", "#ffffff"), 21, 1e-9);
});

Deno.test("line colours reach 3:1 against white (WCAG 2.1, 1.4.11 non-text contrast)", () => {
  // Source: WCAG 2.1 [wcag-2023], success criterion 1.4.11: at least 3:1
  for (const [name, colour] of colours) {
    assert(contrast(colour, "#ffffff") >= 3, `${name} ${colour}`);
  }
});

for (const [sight, matrix] of Object.entries(SIMULATIONS)) {
  Deno.test(`line colours stay apart with ${sight} (Machado, Oliveira & Fernandes 2009)`, () => {
    // Source: matrices of Machado et al. 2009 [machado-2009]; 0.15 in OKLab is the limit this
    // palette sets itself
    for (const [one, first] of colours) {
      for (const [other, second] of colours) {
        if (one >= other) continue;
        const distance = oklabDistance(seenWith(first, matrix), seenWith(second, matrix));
        assert(distance >= 0.15, `${one} and ${other}: ${distance.toFixed(3)}`);
      }
    }
  });
}

Deno.test("a red and a green of equal luminance fail the distance check", () => {
  // Property: the check above can fail
  const matrix = SIMULATIONS["deuteranopia"]!;
  const distance = oklabDistance(seenWith("#b04a3a", matrix), seenWith("#6f7a2a", matrix));
  assert(distance < 0.15, String(distance));
});

Deno.test("field classes change lightness in one direction on each side of their turning point", () => {
  // Property: neighbouring classes are told apart by lightness alone
  const temperature = TEMPERATURE_CLASSES.colours.map(luminance);
  const turn = TEMPERATURE_CLASSES.thresholds.indexOf(0) + 1;
  for (let i = 1; i < temperature.length; i++) {
    assert(
      i <= turn ? temperature[i]! > temperature[i - 1]! : temperature[i]! < temperature[i - 1]!,
    );
  }
  const radiation = RADIATION_CLASSES.colours.map(luminance);
  for (let i = 1; i < radiation.length; i++) assert(radiation[i]! > radiation[i - 1]!);
  for (const classes of [TEMPERATURE_CLASSES, RADIATION_CLASSES, GROUND_CLASSES]) {
    assert(classes.colours.length === classes.thresholds.length + 1);
  }
});
