/** What people type for the exercises of the chapter, worked out by hand; units as told in typed.ts. */
import { SIGN, type Typed, UNIT } from "../typed.ts";

export const TYPED: Readonly<Record<string, Typed>> = {
  "soil.penetration": {
    right: ["2.24 m", "224 cm", "2240 mm", "7.35 ft", "88 in", "7' 4\"", "7 1/3 ft", '88"'],
    wrong: [["0.117 m", 0], ["3.97 m", 1], ["5.02 m", 2], [
      "-2.24 m",
      SIGN,
    ], [2.24, UNIT]],
  },
  "soil.lag": {
    right: ["26 d", "26 days", "25.9 days", "3.7 weeks", "623 h", "623 hours", "2.24e6 s"],
    wrong: [["163 d", 0], ["81.5 days", 1], [
      "26 h",
      /units/,
    ], [26, UNIT]],
  },
  "soil.freezing": {
    right: ["83.5 MJ", "83500 kJ", "8.35e7 J", "23.2 kWh", "79.1 kBtu", "0.791 therm", "0.0835 GJ"],
    wrong: [
      ["334 MJ", 0],
      ["83.5 kJ", 1],
      ["1.045 MJ", 2],
      ["83500 MJ", /units/],
      ["83.5e6 kWh", /units/],
      ["83,5 MJ", /point/],
      ["83.5 MW", UNIT],
    ],
  },
};
