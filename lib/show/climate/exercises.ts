/** The exercises of the climate chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

/** Exercises of the climate chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "climate.noonSun",
    asked: "the sun's height",
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
      { value: 90 - 23.44, hint: "The latitude is still missing." },
      {
        value: 50 + 23.44,
        hint:
          "That is how far the sun stands from the vertical at noon: heights start at the horizon.",
      },
      { value: 23.44, hint: "That is the tilt alone: how far north are you?" },
      {
        value: 50,
        hint: "That is the latitude: on the equator, at the equinox, the sun would stand overhead.",
      },
      {
        value: 90 - 50 - 2 * 23.44,
        hint:
          "Twice the tilt lies between the longest and the shortest day; from the equinox it is once.",
      },
      {
        value: 180 - 50 - 23.44,
        hint:
          "From horizon to horizon it is 180 degrees; from the horizon to overhead half of that.",
      },
    ],
    explanation: "90 − latitude − 23.44. Such a low sun makes steep glazing worth its price.",
  },
  {
    id: "climate.degreeDays",
    asked: "the sum of degree-days",
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
      {
        value: 7 * 18,
        hint:
          "That counts only from 0 degC up to the base: how far below 0 degC does the spell go?",
      },
      {
        value: 7 * (273.15 - 20),
        hint: "That counts from absolute zero: a degree-day is a difference from the base.",
      },
      { value: 38 + 7, hint: "Difference times days, not added to them." },
      { value: 38 / 7, hint: "Difference times days, not shared among them." },
      { value: 30 * 38, hint: "That is a month of such days; how long is the spell?" },
      { value: 7 * 38 * 1.8 + 32, hint: "A difference has no 32 in it, and K d are asked for." },
    ],
    explanation: "(18 − (−20)) · 7. Multiply by the loss coefficient and by 24 h to get heat.",
  },
  {
    id: "climate.incidence",
    asked: "the angle of incidence",
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
      {
        value: 180 - 17,
        hint: "That is the angle from the back of the glazing: the normal points outdoors.",
      },
      { value: 2 * 17, hint: "That is the angle between the ray and its mirror image." },
      { value: 90 + 17, hint: "The ray comes from in front: less than a right angle." },
      { value: 73 - 17, hint: "Nothing is subtracted here: which way does the normal point?" },
      { value: 0, hint: "Only a sun on the horizon would strike it straight on." },
      {
        value: 17 / 2,
        hint:
          "Nothing is halved here: the angle is from normal to ray, not to a line between them.",
      },
      {
        value: -17,
        hint: "Angles of incidence count from the normal to either side: none is below zero.",
      },
    ],
    explanation:
      "The normal is horizontal, so the angle is the sun's height. On horizontal glazing the " +
      "same sun strikes at 73 degrees, where clear sheets reflect much of it.",
  },
];
