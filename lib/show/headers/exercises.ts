/** The exercises of the headers chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

/** Exercises of the headers chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "headers.areaRatio",
    asked: "the ratio of areas",
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
      {
        value: 4 * 16 * 0.102 ** 2 / 0.254 ** 2,
        hint: "A diameter for the tubes and a radius for the header: take the same for both.",
      },
      {
        value: 16 * 0.102 ** 2 / 0.254 ** 2 / 4,
        hint: "A radius for the tubes and a diameter for the header: take the same for both.",
      },
      {
        value: (16 * 0.102) ** 2 / 0.254 ** 2,
        hint: "Square the diameter of each tube, then add: not the other way round.",
      },
      { value: 16 * 0.102, hint: "That is the tubes' diameters laid side by side." },
      {
        value: 8 * 0.102 ** 2 / 0.254 ** 2,
        hint: "The header is fed from one end: all tubes hang on one area of it.",
      },
      {
        value: 16 * 0.102 ** 2 * Math.PI / 4,
        hint: "That is the area of all tubes in m²: what is it over the header's?",
      },
      {
        value: 0.254 ** 2 * Math.PI / 4,
        hint: "That is the area of the header in m²: what are the tubes' over it?",
      },
      {
        value: 16 * 0.102 ** 2 / 0.254 ** 2 * Math.PI / 4,
        hint: "π/4 belongs to both areas, or to neither.",
      },
      {
        value: 16 * 0.102 ** 2 / 0.254 ** 2 / (Math.PI / 4),
        hint: "π/4 is below the line alone: it belongs to both areas.",
      },
      {
        value: 16 * (0.102 / 0.254) ** 3,
        hint: "An area goes with the square, not with the cube.",
      },
    ],
    explanation:
      "16·0.102²/0.254². A ratio well above one means fast air in the header and uneven " +
      "tubes.",
  },
  {
    id: "headers.strength",
    asked: "the share of the wall that is left",
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
      {
        value: 121 / (406 - 121),
        hint: "That is the hole over what is left: put what is left over the whole pitch.",
      },
      {
        value: 406 / 121,
        hint: "That is the pitch over the hole: which share of the pitch has wall?",
      },
      {
        value: (406 - 121 / 2) / 406,
        hint: "Half a hole at one end of the pitch, half a hole at the other.",
      },
      {
        value: 406 / (406 + 121),
        hint: "The pitch goes from centre to centre: the hole lies within it.",
      },
      {
        value: 121 / (406 + 121),
        hint:
          "The pitch goes from centre to centre, so the hole lies within it; and what is left is asked for.",
      },
      { value: 1 - (121 / 406) ** 2, hint: "Along a line lengths count, not squares." },
      {
        value: 1 - Math.PI * 121 ** 2 / 4 / 406 ** 2,
        hint: "That is a share of an area: the wall tears along the line of holes.",
      },
      { value: 406 - 121, hint: "That is what is left in millimetres: over what is it a share?" },
      {
        value: (406 - 121) / 121,
        hint: "That is what is left over the hole: put it over the whole pitch.",
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
    }, {
      value: "far",
      because: /friction|rough|rub/,
      hint: "The question says that nothing rubs: what else changes the pressure along a header?",
    }, {
      value: "far",
      because: /distan|long|way|path|last|away/,
      hint: "Without friction a long way costs nothing: what does the air's speed do along it?",
    }, {
      value: "far",
      because: /speed|fast|slow|velocit/,
      hint: "Right to look at the speed: what becomes of the static pressure where air slows down?",
    }, {
      value: "far",
      because: /exit|outlet|return|suction/,
      hint: "Right to look at the return: does its pressure rise or fall towards its own exit?",
    }, {
      value: "far",
      because: /left|remain|take|share|first/,
      hint: "Tubes do not take turns: each gets what the pressure across it drives.",
    }, {
      value: "middle",
      unoffered: true,
      hint: "Both pressures run one way along the headers: the extreme lies at an end.",
    }, {
      value: "both",
      unoffered: true,
      hint: "In at one end and out at the other: the two ends are not alike.",
    }, {
      value: "same",
      unoffered: true,
      hint: "Without friction the pressure still changes, because the speed does.",
    }, {
      value: "none",
      unoffered: true,
      hint: "Where the speed changes, so does the pressure across the tubes: some get least.",
    }],
    explanation: "Static pressure is regained along the supply header and lost along the return " +
      "header, so the drop across a tube is smallest near the feed. A faster fan changes nothing: " +
      "both vary with the square of the speed.",
  },
];
