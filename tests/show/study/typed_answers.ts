/** What people type for the exercises of the whole study, worked out by hand; units as told in typed.ts. */
import { SIGN, type Typed, UNIT } from "../typed.ts";

export const TYPED: Readonly<Record<string, Typed>> = {
  "study.balance": {
    right: ["11 kW", "11000 W", "37.5 kBtu/h", "37533 Btu/h", "0.011 MW"],
    wrong: [
      ["16 kW", 0],
      ["21 kW", 1],
      ["5 kW", 2],
      ["800 W", 3],
      ["-11 kW", SIGN],
      ["11 W", /units/],
      ["11", UNIT],
      ["11 kWh", UNIT],
    ],
  },
  "study.first": {
    right: ["curtain", "the curtain", "Curtain."],
    wrong: [["tubes", 0], ["both", /order/], ["not the tubes", /one of/]],
  },
};
