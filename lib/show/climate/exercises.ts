/** The exercises of the climate chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

/** Exercises of the climate chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "climate.noonSun",
    question:
      "How high does the sun stand at solar noon on the shortest day at 50 degrees north? " +
      'The earth\'s axis is tilted by 23.44 degrees. Answer as an angle, such as "30 deg".',
    kind: "angle",
    answer: 90 - 50 - 23.44,
    tolerance: 0.02,
    slips: [
      {
        value: 90 - 50 + 23.44,
        hint: "That is the longest day: in winter the tilt is subtracted.",
      },
      { value: 90 - 50, hint: "That is the equinox: the tilt of the axis is still missing." },
      { value: 50 - 23.44, hint: "That is the angle from the vertical: start from 90 degrees." },
    ],
    explanation: "90 − latitude − 23.44. Such a low sun makes steep glazing worth its price.",
  },
  {
    id: "climate.degreeDays",
    question: "A 7-day spell has a mean of −20 degC. How many degree-days below 18 degC is " +
      'that? Answer such as "200 K d".',
    kind: "degreeDays",
    bareUnit: "K d",
    answer: 7 * 38,
    tolerance: 0.005,
    slips: [
      { value: 7 * 2, hint: "Wrong sign: from −20 up to 18 is 38 K, not 2 K." },
      { value: 38, hint: "That is one day; the spell lasts seven." },
      {
        value: 7 * 38 * 1.8,
        hint: "That is in Fahrenheit degree-days; the question asks for K d.",
      },
      { value: 7 * 20, hint: "That counts from 0 degC; the base is 18 degC." },
    ],
    explanation: "(18 − (−20)) · 7. Multiply by the loss coefficient and by 24 h to get heat.",
  },
  {
    id: "climate.incidence",
    question: "The noon sun is 17 degrees above the horizon, straight in front of vertical " +
      "glazing. At what angle from the normal of the glazing does it strike? Answer as an angle, " +
      'such as "30 deg".',
    kind: "angle",
    answer: 17,
    tolerance: 0.02,
    slips: [
      {
        value: 73,
        hint: "That is the angle from the vertical: the normal of a wall is horizontal.",
      },
      { value: 90, hint: "That would graze the wall: the sun is in front of it." },
    ],
    explanation:
      "The normal is horizontal, so the angle is the sun's height. On horizontal glazing the " +
      "same sun strikes at 73 degrees, where clear sheets reflect much of it.",
  },
];
