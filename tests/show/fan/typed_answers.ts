/** What people type for the exercises of the chapter, worked out by hand; units as told in typed.ts. */
import { type Typed, UNIT } from "../typed.ts";

export const TYPED: Readonly<Record<string, Typed>> = {
  "fan.twoFans": {
    right: ["less", "Less", '"less"', "less."],
    wrong: [["twice", 0], ["More", 1], ["half", /damper/], ["as much", /less, more, twice/]],
  },
  "fan.halfSpeed": {
    right: ["15 W", "15W", "15 watts", "0.015 kW", "51.2 Btu/h", "0.0512 kBtu/h", "15.0 W."],
    wrong: [["60 W", 0], ["30 W", 1], ["15 kW", /units/], [15, UNIT], [
      "15 J",
      UNIT,
    ]],
  },
  "fan.density": {
    right: [
      "75 Pa",
      "0.075 kPa",
      "0.75 hPa",
      "0.75 mbar",
      "0.301 in wg",
      "0.301 inH2O",
      "0.301 inches of water",
    ],
    wrong: [["133.3 Pa", 0], ["100 Pa", 1], ["56.25 Pa", 2]],
  },
};
