/** What people type for the exercises of the chapter, worked out by hand; units as told in typed.ts. */
import { type Typed, UNIT } from "../typed.ts";

export const TYPED: Readonly<Record<string, Typed>> = {
  "headers.areaRatio": {
    right: ["2.58", 2.58, "2.6", "= 2.58"],
    wrong: [["6.43", 0], [0.388, 1], ["0.161", 2], [
      "2.58 m2",
      UNIT,
    ]],
  },
  "headers.strength": {
    right: ["70 %", "70.2%", "0.70", 0.702, "70 percent", "70 per cent"],
    wrong: [["30 %", 0], ["0.404", 1], ["70 mm", UNIT], [
      70,
      /% behind/,
    ]],
  },
  "headers.starving": {
    right: ["near", "Near", '"near"', "those near the feed", "the near ones"],
    wrong: [["far", 0], ["the far ones", 0], ["not near", /far, near/], [
      "near and far",
      /far, near/,
    ]],
  },
};
