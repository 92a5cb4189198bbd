/** The exercises of the measured chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

/** Exercises of the measured chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "measured.heat",
    question:
      "0.5 m³/s of air of 1.2 kg/m³ and 1006 J/(kg K) enters the tubes at 26 degC and leaves at " +
      '16 degC; no water condenses. How much heat does it leave? Answer such as "3 kW".',
    kind: "power",
    answer: 0.5 * 1.2 * 1006 * 10,
    tolerance: 0.02,
    slips: [
      { value: 0.5 * 1006 * 10, hint: "Cubic metres are not kilograms: the density is missing." },
      { value: 0.5 * 1.2 * 1006 * 26, hint: "Only what it loses counts: intake less outlet." },
    ],
    explanation: "0.5 · 1.2 · 1006 · (26 − 16) = 6.0 kW. What condenses comes on top.",
  },
  {
    id: "measured.difference",
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
      { value: "low", hint: "The heat hangs on the difference of the two." },
    ],
    explanation:
      "What both are off by cancels in the difference: calibrate the pair together, and say so in " +
      "the log map.",
  },
  {
    id: "measured.nmbe",
    question:
      "Over a season 12 000 kWh of heat was measured and 10 800 kWh planned. What is the NMBE, " +
      'measured less planned, with nothing taken off the count (p = 0)? Answer such as "-3 %".',
    kind: "share",
    answer: 0.1,
    tolerance: 0.01,
    slips: [
      { value: -0.1, hint: "The sign here is measured less planned: say it in every report." },
      { value: 1200 / 10800, hint: "The measured value stands below the line." },
    ],
    explanation:
      "(12 000 − 10 800)/12 000 = 10 %: the model is too low, on the very limit for hours. A mean " +
      "that fits can hide hours that do not, so CV(RMSE) stands beside it.",
  },
];
