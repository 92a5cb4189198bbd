import { assertAlmostEquals } from "@std/assert";
import {
  frictionColebrook,
  frictionFromManning,
  frictionHaaland,
  frictionLaminar,
  velocityPressure,
} from "../../lib/tubes/mod.ts";

const ROUGHNESS = [0, 1e-5, 1e-4, 1e-3, 0.01, 0.05];
/** Reynolds number, then Colebrook and Haaland by relative roughness. */
const TABLE: readonly [number, readonly number[], readonly number[]][] = [
  [
    4e3,
    [0.0399070, 0.0399172, 0.0400084, 0.0409104, 0.0490823, 0.0769868],
    [0.0404228, 0.0404277, 0.0404854, 0.0412162, 0.0492358, 0.0776349],
  ],
  [
    1e4,
    [0.0308830, 0.0308984, 0.0310372, 0.0323818, 0.0431266, 0.0738013],
    [0.0308862, 0.0308943, 0.0309903, 0.0321749, 0.0430449, 0.0741186],
  ],
  [
    3e4,
    [0.0234830, 0.0235102, 0.0237532, 0.0259697, 0.0398223, 0.0723135],
    [0.0233166, 0.0233325, 0.0235198, 0.0256446, 0.0397902, 0.0725100],
  ],
  [
    1e5,
    [0.0179898, 0.0180438, 0.0185139, 0.0221745, 0.0385035, 0.0717809],
    [0.0178249, 0.0178604, 0.0182651, 0.0219662, 0.0385385, 0.0719397],
  ],
  [
    1e6,
    [0.0116450, 0.0118695, 0.0134414, 0.0199435, 0.0379647, 0.0715738],
    [0.0115868, 0.0117669, 0.0133262, 0.0199412, 0.0380362, 0.0717186],
  ],
];

Deno.test("frictionColebrook() gives Colebrook 1939 to the last digit of the table", () => {
  // Source: Colebrook 1939 [colebrook-1939], recomputed from the formula by an independent root
  // finder
  for (const [reynolds, colebrook] of TABLE) {
    ROUGHNESS.forEach((roughness, i) =>
      assertAlmostEquals(frictionColebrook(reynolds, roughness), colebrook[i]!, 0.6e-7)
    );
  }
});

Deno.test("frictionColebrook() gives the value of the fluids library's test suite at Re 1e5, ε/D 1e-4", () => {
  // Source: test suite of the fluids library [fluids-2016] (Colebrook 0.0185138661, Haaland
  // 0.0182650530)
  assertAlmostEquals(frictionColebrook(1e5, 1e-4), 0.0185138661, 1e-10);
  assertAlmostEquals(frictionHaaland(1e5, 1e-4), 0.0182650530, 1e-10);
});

Deno.test("frictionHaaland() gives Haaland 1983 to the last digit of the table", () => {
  // Source: Haaland 1983 [haaland-1983], recomputed from the formula
  for (const [reynolds, , haaland] of TABLE) {
    ROUGHNESS.forEach((roughness, i) =>
      assertAlmostEquals(frictionHaaland(reynolds, roughness), haaland[i]!, 0.6e-7)
    );
  }
});

Deno.test("frictionLaminar() gives Hagen–Poiseuille: 0.5 at Re 128", () => {
  // Source: Hagen–Poiseuille, exact
  assertAlmostEquals(frictionLaminar(128), 0.5, 1e-15);
});

Deno.test("frictionFromManning() gives f = 8gn²/(D/4)^(1/3) for drain tube sizes", () => {
  // Source: exact identity of Manning's and Darcy's formulas, recomputed from the formula
  const rows: readonly [number, number, number][] = [
    [0.015, 0.10, 0.0603689],
    [0.015, 0.15, 0.0527371],
    [0.016, 0.10, 0.0686864],
    [0.017, 0.25, 0.0571323],
    [0.020, 0.30, 0.0744132],
  ];
  for (const [manning, diameter, friction] of rows) {
    assertAlmostEquals(frictionFromManning(manning, diameter), friction, 0.6e-7);
  }
});

Deno.test("Darcy's formula gives 36.288 Pa smooth and 115.2 Pa corrugated in 20 m of 0.1 m tube", () => {
  // Source: exact, recomputed from Δp = f·L/D·½ρv²
  const head = velocityPressure(1.2, 4) * 20 / 0.1;
  assertAlmostEquals(0.0189 * head, 36.288, 1e-9);
  assertAlmostEquals(0.06 * head, 115.2, 1e-9);
});
