/** What people type for the exercises of the chapter, worked out by hand; units as told in typed.ts. */
import type { Typed } from "../typed.ts";

export const TYPED: Readonly<Record<string, Typed>> = {
  "worth.payback": {
    right: ["12", "12 years", "12.0", "about 12 years", 12],
    wrong: [["9.2", 0], ["7.5", 1], ["40", 2]],
  },
  "worth.presentValue": {
    right: ["70 %", "70%", "0.70", "0.7014", "70.1 %"],
    wrong: [["64 %", 0], ["1.426", 1], ["73.5 %", 2]],
  },
  "worth.rival": {
    right: ["sealing", "Sealing", '"sealing"', "sealing."],
    wrong: [["store", 0], ["heater", 1]],
  },
  "worth.ladder": {
    right: ["5800 kWh", "5.8 MWh", "5800kWh"],
    wrong: [["7000 kWh", 0], ["4200 kWh", 1], ["2800 kWh", 2]],
  },
  "worth.chance": {
    right: ["65 %", "65%", "0.65", "0.6513", "65.1 %"],
    wrong: [["100 %", 0], ["10 %", 1], ["35 %", 2]],
  },
};
