/** The exercises of the soil chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

const YEAR = 365 * 86400;
/** kJ in a kWh */
const KILOJOULES = 3600;
const soilDiffusivity = 1.0 / 2.0e6;
const yearDepth = Math.sqrt(soilDiffusivity * YEAR / Math.PI);
const dayDepth = Math.sqrt(soilDiffusivity * 86400 / Math.PI);
const lag = 1 / yearDepth * 365 * 86400 / (2 * Math.PI);

/** Exercises of the soil chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "soil.penetration",
    question:
      "A soil has conductivity 1.0 W/(m K) and heat capacity 2.0 MJ/(m³ K). At what depth " +
      'has the annual wave fallen to 1/e? Answer with a unit, such as "1.2 m".',
    kind: "length",
    answer: yearDepth,
    tolerance: 0.02,
    slips: [
      { value: dayDepth, hint: "That is the daily wave: the question asks about a year." },
      { value: Math.sqrt(soilDiffusivity * YEAR), hint: "The π is missing: √(a·P/π)." },
      { value: soilDiffusivity * YEAR / Math.PI, hint: "The square root is missing: √(a·P/π)." },
    ],
    explanation:
      "√(a·P/π) with a = 1.0/2.0e6 m²/s. A daily wave reaches only a twentieth as deep: one " +
      "night's store is a thin layer, a season's a thick one.",
  },
  {
    id: "soil.lag",
    question: "In the same soil, how much later does the coldest day arrive 1 m down than at the " +
      'surface? Answer as a time, such as "10 days".',
    kind: "time",
    answer: lag,
    tolerance: 0.03,
    slips: [
      { value: lag * 2 * Math.PI, hint: "One radian is a year over 2π, not a year." },
      { value: lag * Math.PI, hint: "One radian is a year over 2π, not a year over 2." },
    ],
    explanation:
      "Depth over penetration depth is the lag in radians; multiply by 365/2π for days. The ground " +
      "at tube depth is coldest weeks after the air is.",
  },
  {
    id: "soil.freezing",
    question: "One cubic metre of soil holds 25 % water by volume. How much heat does that water " +
      'release when all of it freezes at 0 degC, at 334 kJ/kg? Answer such as "50 MJ".',
    kind: "energy",
    answer: 0.25 * 1000 * 334 / KILOJOULES,
    tolerance: 0.02,
    slips: [
      {
        value: 1000 * 334 / KILOJOULES,
        hint: "That is a whole cubic metre of water; only a quarter of it is water.",
      },
      {
        value: 0.25 * 334 / KILOJOULES,
        hint: "Check litres and cubic metres: a cubic metre of water is 1000 kg.",
      },
      {
        value: 0.25 * 1000 * 4.18 / KILOJOULES,
        hint: "That is the heat of cooling it by 1 K, not of freezing.",
      },
    ],
    explanation: "0.25 · 1000 kg · 334 kJ/kg. As much as cooling the same soil by some forty " +
      "kelvin: wet ground freezes slowly, and thaws slowly.",
  },
];
