/** What people type for the exercises of the chapter, worked out by hand; units as told in typed.ts. */
import { SIGN, type Typed, UNIT } from "../typed.ts";

export const TYPED: Readonly<Record<string, Typed>> = {
  "climate.noonSun": {
    right: ["16.56 deg", "16.6°", "16.5 degrees", "0.289 rad", "about 16.6 deg", "~16.6°"],
    wrong: [
      ["63.44 deg", 0],
      ["40 degrees", 1],
      ["26.56°", 2],
      ["-16.56 deg", SIGN],
      [16.56, UNIT],
      ["16.56 m", UNIT],
    ],
  },
  "climate.degreeDays": {
    right: [
      "266 K d",
      "266 K·d",
      "266 Kd",
      266,
      "266",
      "266 degC d",
      "266 °C d",
      "479 degF d",
      "6384 K h",
    ],
    wrong: [
      ["14 K d", 0],
      [38, 1],
      ["479 K d", 2],
      ["140 K d", 3],
      ["-266 K d", SIGN],
      ["266 K", UNIT],
      ["266 d", UNIT],
    ],
  },
  "climate.incidence": {
    right: ["17 deg", "17°", "17 degrees", "0.297 rad"],
    wrong: [["73 deg", 0], ["90°", 1], ["17 %", UNIT]],
  },
};
