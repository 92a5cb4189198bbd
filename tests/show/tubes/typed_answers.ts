/** What people type for the exercises of the chapter, worked out by hand; units as told in typed.ts. */
import { type Typed, UNIT } from "../typed.ts";

export const TYPED: Readonly<Record<string, Typed>> = {
  "tubes.pressure": {
    right: ["100 Pa", "100.2 Pa", "0.1 kPa", "1 mbar", "0.402 in wg", "0.402 inH2O"],
    wrong: [["200.4 Pa", 0], ["92.1 Pa", 1], ["31.1 Pa", 2], ["376.6 Pa", 3]],
  },
  "tubes.effectiveness": {
    right: ["77 %", "76.8 %", "0.77", 0.768],
    wrong: [["1.46", 0], ["23.2 %", 1], [77, /% behind/]],
  },
  "tubes.count": {
    right: ["82", 82, "81.6", "82 tubes", "81"],
    wrong: [["163", 0], [20.4, 1], ["16.3", 2], ["82 m", UNIT]],
  },
};
