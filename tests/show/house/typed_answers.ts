/** What people type for the exercises of the chapter, worked out by hand; units as told in typed.ts. */
import { type Typed, UNIT } from "../typed.ts";

export const TYPED: Readonly<Record<string, Typed>> = {
  "house.loss": {
    right: [
      "2266 W/K",
      "2.27 kW/K",
      "2270 W/°C",
      "4296 Btu/(h degF)",
      "4300 Btu/h/°F",
      "4300 Btu/(hr °F)",
      "4.3 kBtu/(h degF)",
    ],
    wrong: [["1944 W/K", 0], ["322 W/K", 1], ["1162000 W/K", 2], ["2266 W", UNIT]],
  },
  "house.night": {
    right: [
      "476 kWh",
      "476 kW h",
      "1713 MJ",
      "1.713 GJ",
      "1624 kBtu",
      "1.624 MMBtu",
      "16.24 therm",
      "476000 Wh",
    ],
    wrong: [["34 kWh", 0], ["475900 kWh", 1], ["31.7 kWh", 2], [
      "476 kW",
      UNIT,
    ]],
  },
  "house.curtain": {
    right: [
      "1.71 W/(m2 K)",
      "1.71 W/m2K",
      "1.71 W/m²/K",
      "0.301 Btu/(h ft2 degF)",
      "0.30 Btu/(h ft² °F)",
      "0.3 Btu/hr/ft2/F",
      "R-3.32",
    ],
    wrong: [
      ["1.53 W/(m2 K)", 0],
      ["2.97 W/(m2 K)", 2],
      ["1.71 W/K", UNIT],
    ],
  },
  "house.drip": {
    right: ["yes", "Yes", "yes.", "yes, it drips"],
    wrong: [["no", 0], ["No!", 0], ["perhaps", /dew point/], ["damp", /no, yes/]],
  },
  "house.first": {
    right: ["sealing", "Sealing", "the sealing"],
    wrong: [["curtain", 0], ["both", /divide/], ["cloth", /curtain, sealing/]],
  },
};
