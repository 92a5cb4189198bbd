/** The exercises of the measured chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

/** Exercises of the measured chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "measured.heat",
    asked: "the heat flow",
    question:
      "0.5 m³/s of air of 1.2 kg/m³ and 1006 J/(kg K) enters the tubes at 26 degC and leaves at " +
      '16 degC; no water condenses. How much heat does it leave? Answer such as "3 kW".',
    kind: "power",
    answer: 0.5 * 1.2 * 1006 * 10,
    tolerance: 0.02,
    slips: [
      { value: 0.5 * 1006 * 10, hint: "Cubic metres are not kilograms: the density is missing." },
      { value: 0.5 * 1.2 * 1006 * 26, hint: "Only what it loses counts: intake less outlet." },
      {
        value: 0.5 * 1.2 * 1006 * 16,
        hint: "That takes the outlet's temperature: only the difference counts.",
      },
      {
        value: 0.5 * 1.2 * 1006 * 42,
        hint: "The two temperatures were added: their difference counts.",
      },
      {
        value: 0.5 * 1.2 * 1006 * (26 + 273.15),
        hint: "That is the heat above absolute zero: only the difference counts.",
      },
      {
        value: 0.5 * 1.2 * 1006 * 10 * 1.8,
        hint: "The heat capacity is for one kelvin: the difference needs no turning into degF.",
      },
      {
        value: 0.5 * 1.2 * 1006 * 10 / 1.8,
        hint: "The difference is in kelvins already: nothing to divide by 1.8.",
      },
      {
        value: 0.5 * 1.2 * 1207 * 10,
        hint:
          "1207 J/(m³ K) has the density in it already: with 1.2 kg/m³ goes a heat capacity by mass.",
      },
      {
        value: 0.5 / 1.2 * 1006 * 10,
        hint: "Kilograms are cubic metres times density, not divided by it.",
      },
      {
        value: 0.5 * 1.2 * 10,
        hint: "The heat capacity is missing, or watts stand for kilowatts.",
      },
      { value: 0.5 * 1.2 * 1006, hint: "That is for one kelvin." },
      {
        value: -0.5 * 1.2 * 1006 * 10,
        hint: "It leaves heat behind: intake less outlet is above zero.",
      },
    ],
    explanation: "0.5 · 1.2 · 1006 · (26 − 16) = 6.0 kW. What condenses comes on top.",
  },
  {
    id: "measured.difference",
    asked: "the uncertainty",
    question:
      "Each of two probes has a standard uncertainty of 0.2 K, and they err independently. Intake " +
      "less outlet is 5 K. What is the standard uncertainty of the heat as a share, the flow being " +
      'known exactly? Answer such as "1 %".',
    kind: "share",
    answer: Math.SQRT2 * 0.2 / 5,
    tolerance: 0.02,
    slips: [
      { value: 0.2 / 5, hint: "That is one probe: the other errs too." },
      { value: 0.4 / 5, hint: "Independent errors add up in squares, not by themselves." },
      {
        value: Math.SQRT2 * 0.2,
        hint: "That is in kelvins, or the 0.2 is missing: which share of the difference is it?",
      },
      { value: 2 * 0.2 ** 2 / 5, hint: "The root is missing." },
      {
        value: 0.2 / Math.SQRT2 / 5,
        hint: "That is the mean of two readings: a difference does not become surer by it.",
      },
      { value: 5 / (Math.SQRT2 * 0.2), hint: "Inverted: uncertainty over difference." },
      { value: 0, hint: "They would cancel if both erred alike: these err independently." },
      {
        value: 2 * Math.SQRT2 * 0.2 / 5,
        hint: "That is the expanded one, twice the standard uncertainty.",
      },
      { value: 0.2, hint: "That is one probe, in kelvins." },
      {
        value: 0.4,
        hint:
          "Both added up, in kelvins: independent errors add in squares, and a share is asked for.",
      },
      {
        value: Math.SQRT2 * 0.2 / 25,
        hint: "The difference stands below the line once, not squared.",
      },
    ],
    explanation: "√(0.2² + 0.2²)/5 = 5.7 %. At 2 K it would be 14 %: small differences are dear.",
  },
  {
    id: "measured.bath",
    question:
      "Both probes were calibrated in one bath, and both now read 0.3 K too high. What becomes of " +
      'the heat? Answer "high", "low" or "same".',
    kind: "choice",
    answer: "same",
    tolerance: 0,
    slips: [
      { value: "high", hint: "The heat hangs on the difference of the two." },
      { value: "low", hint: "Neither reads too low; and what counts is one less the other." },
      {
        value: "high",
        because: /both|two|twice|double|0\.6/,
        hint: "Both are too high: does the difference of the two notice?",
      },
      {
        value: "high",
        because: /intake|in\b/,
        hint: "The intake reads too high; so does the outlet.",
      },
      { value: "high", because: /hot|warm/, hint: "Warmer readings, both of them: subtract them." },
      {
        value: "low",
        because: /outlet|out\b/,
        hint: "The outlet reads too high; so does the intake.",
      },
      {
        value: "low",
        because: /both|two|twice|double|0\.6/,
        hint: "Write both readings as true value plus 0.3 K, and subtract.",
      },
      { value: "low", because: /cold|cool/, hint: "Neither reads too cold." },
      {
        value: "double",
        unoffered: true,
        hint: "The two errors would add up only if they had opposite signs.",
      },
      {
        value: "half",
        unoffered: true,
        hint: "Nothing is averaged here: the heat goes with a difference.",
      },
      {
        value: "unknown",
        unoffered: true,
        hint: "What each is off by is given: subtract the two readings.",
      },
      {
        value: "zero",
        unoffered: true,
        hint: "The difference is still there: what has 0.3 K done to it?",
      },
    ],
    explanation:
      "What both are off by cancels in the difference: calibrate the pair together, and say so in " +
      "the log map.",
  },
  {
    id: "measured.nmbe",
    asked: "the NMBE",
    question:
      "Over a season 12 000 kWh of heat was measured and 10 800 kWh planned. What is the NMBE, " +
      'measured less planned, with nothing taken off the count (p = 0)? Answer such as "-3 %".',
    kind: "share",
    answer: 0.1,
    tolerance: 0.01,
    slips: [
      { value: -0.1, hint: "The sign here is measured less planned: say it in every report." },
      { value: 1200 / 10800, hint: "The measured value stands below the line." },
      {
        value: 10800 / 12000,
        hint: "That is planned over measured: what is the difference over measured?",
      },
      {
        value: 12000 / 10800,
        hint: "That is measured over planned: what is the difference over measured?",
      },
      { value: 1200, hint: "That is the difference in kWh: which share is it?" },
      { value: -1200 / 10800, hint: "Sign and base: measured less planned, over measured." },
      { value: 1200 / 22800, hint: "Over measured alone, not over the sum of both." },
      { value: 1200 / 11400, hint: "Over measured, not over the mean of both." },
      { value: Math.sqrt(0.1), hint: "No root: the bias is a plain difference of sums." },
      { value: 0.01, hint: "Not squared: the bias keeps its sign." },
    ],
    explanation:
      "(12 000 − 10 800)/12 000 = 10 %: the model is too low, on the very limit for hours. A mean " +
      "that fits can hide hours that do not, so CV(RMSE) stands beside it.",
  },
];
