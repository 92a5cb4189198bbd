/** What people type for the exercises of the chapter, worked out by hand; units as told in typed.ts. */
import { type Typed, UNIT } from "../typed.ts";

export const TYPED: Readonly<Record<string, Typed>> = {
  "store.latentShare": {
    right: ["61 %", "0.606", "60.6 percent"],
    wrong: [["39.4 %", 0], ["1.54", 1], ["61 kJ", UNIT]],
  },
  "store.cop": {
    right: ["12", 12, "12.0", "12 kWh", "12 kWh/kWh"],
    wrong: [["32", 0], [20, 1], ["0.6", 2], ["60 %", UNIT]],
  },
  "store.gross": {
    right: [
      "3500 kWh",
      "3.5 MWh",
      "12.6 GJ",
      "12600 MJ",
      "11942 kBtu",
      "119.4 therm",
      "3\u202f500 kWh",
    ],
    wrong: [
      ["9000 kWh", 0],
      ["2600 kWh", 1],
      ["8000 kWh", 2],
      ["3500 MWh", /units/],
      ["3500 MJ", /Too small|units/],
      ["1.26e10 kWh", /units/],
      ["3 500 kWh", /without spaces/],
    ],
  },
  "store.season": {
    right: ["6.25 %", "0.0625", "6.3 %"],
    wrong: [
      ["57.5 %", 0],
      ["42.5 %", 1],
      ["12.8 %", 2],
      [6.25, /% behind/],
    ],
  },
  "store.spell": {
    right: ["same", "Same", "the same", '"same"'],
    wrong: [["smaller", 0], ["none", 1], ["larger", /empty/], ["big", /none, same, smaller/]],
  },
};
