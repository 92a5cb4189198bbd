/** The exercises of the headers chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

/** Exercises of the headers chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "headers.areaRatio",
    question:
      "16 tubes of 0.102 m branch off one end-fed header of 0.254 m. What is the ratio of the area " +
      "of all tubes to the area of the header? Answer as a plain number.",
    kind: "number",
    answer: 16 * 0.102 ** 2 / 0.254 ** 2,
    tolerance: 0.02,
    slips: [
      { value: 16 * 0.102 / 0.254, hint: "Area varies with the square of the diameter." },
      { value: 0.254 ** 2 / (16 * 0.102 ** 2), hint: "Inverted: tubes over header." },
      { value: 0.102 ** 2 / 0.254 ** 2, hint: "That is one tube; there are sixteen." },
    ],
    explanation:
      "16·0.102²/0.254². A ratio well above one means fast air in the header and uneven " +
      "tubes.",
  },
  {
    id: "headers.strength",
    question: "Holes of 121 mm are 406 mm apart along a header, centre to centre. What share of " +
      'the wall along that line is left between them? Answer as a share, such as "50 %".',
    kind: "share",
    answer: (406 - 121) / 406,
    tolerance: 0.01,
    slips: [
      { value: 121 / 406, hint: "That is the share that was drilled away." },
      {
        value: (406 - 2 * 121) / 406,
        hint: "Between two centres there are two half holes, not two whole ones.",
      },
    ],
    explanation:
      "(pitch − hole)/pitch. Pressure-pipe engineers call this the ligament efficiency; a buried header " +
      "carries soil, so leave plenty, and use moulded take-offs where little is left.",
  },
  {
    id: "headers.starving",
    question: "With frictionless headers, in at one end and out at the opposite end, which " +
      'tubes get least, those near the feed or those far from it? Answer "near" or "far".',
    kind: "choice",
    answer: "near",
    tolerance: 0,
    slips: [{
      value: "far",
      hint: "Air leaving through the tubes slows down the rest: where it slows, static pressure " +
        "rises. Where along the supply header is that?",
    }],
    explanation: "Static pressure is regained along the supply header and lost along the return " +
      "header, so the drop across a tube is smallest near the feed. A faster fan changes nothing: " +
      "both vary with the square of the speed.",
  },
];
