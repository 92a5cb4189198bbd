/** What people type for the exercises of the chapter, worked out by hand; units as told in typed.ts. */
import type { Typed } from "../typed.ts";

export const TYPED: Readonly<Record<string, Typed>> = {
  "measured.heat": {
    right: ["6.04 kW", "6036 W", "6 kW", "about 6.0 kW", "20596 Btu/h"],
    wrong: [["5030 W", 0], ["15.7 kW", 1], ["12 kW", /large/]],
  },
  "measured.difference": {
    right: ["5.7 %", "0.0566", "5.66 %", "5.65%"],
    wrong: [["4 %", 0], ["8 %", 1]],
  },
  "measured.bath": {
    right: ["same", "Same", '"same"', "the same."],
    wrong: [["high", 0], ["low", 1]],
  },
  "measured.nmbe": {
    right: ["10 %", "0.1", "+10 %", "10.0%"],
    wrong: [["-10 %", 0], ["11.1 %", 1], ["0.111", 1]],
  },
};
