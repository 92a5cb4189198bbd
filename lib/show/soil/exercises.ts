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
    asked: "the penetration depth",
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
      {
        value: Math.sqrt(soilDiffusivity * YEAR / (2 * Math.PI)),
        hint: "Only one π stands below P: the 2 of 2π falls out against the 2 above.",
      },
      {
        value: Math.sqrt(soilDiffusivity * YEAR / 12 / Math.PI),
        hint: "That is the wave of a month: the question asks about a year.",
      },
      {
        value: Math.sqrt(soilDiffusivity * 365 / Math.PI),
        hint: "The period went in in days: with SI units it is in seconds.",
      },
      {
        value: Math.sqrt(soilDiffusivity * 8760 / Math.PI),
        hint: "The period went in in hours: with SI units it is in seconds.",
      },
      {
        value: Math.sqrt(YEAR / Math.PI),
        hint: "The heat capacity is missing: diffusivity is conductivity over heat capacity.",
      },
      {
        value: 1000 * yearDepth,
        hint: "The M of MJ is missing in the heat capacity, or metres stand for millimetres.",
      },
      { value: 2 * yearDepth, hint: "There the wave has fallen to 1/e²: once by e is asked for." },
      {
        value: 2 * Math.PI * yearDepth,
        hint: "That is the length of the wave: it falls to 1/e well above.",
      },
    ],
    explanation:
      "√(a·P/π) with a = 1.0/2.0e6 m²/s. A daily wave reaches only a twentieth as deep: one " +
      "night's store is a thin layer, a season's a thick one.",
  },
  {
    id: "soil.lag",
    asked: "the delay",
    question: "In the same soil, how much later does the coldest day arrive 1 m down than at the " +
      'surface? Answer as a time, such as "10 days".',
    kind: "time",
    answer: lag,
    tolerance: 0.03,
    slips: [
      { value: lag * 2 * Math.PI, hint: "One radian is a year over 2π, not a year." },
      { value: lag * Math.PI, hint: "One radian is a year over 2π, not a year over 2." },
      {
        value: yearDepth * 365 * 86400 / (2 * Math.PI),
        hint: "Radians are depth over penetration depth, not times it.",
      },
      {
        value: 86400 / dayDepth / (2 * Math.PI),
        hint: "That is the delay of the daily wave: the coldest day belongs to the yearly one.",
      },
      {
        value: 86400 / yearDepth,
        hint: "That is the number of radians: how many days is one of them?",
      },
      {
        value: 86400 / yearDepth / (2 * Math.PI),
        hint: "That is the share of a year: times its days.",
      },
      {
        value: 365 * 86400 / 2,
        hint: "That is half a year, where summer stands for winter: far deeper down.",
      },
      {
        value: 365 * 86400 / 4,
        hint: "That is a quarter of a year, for π/2 radians: how many are there in 1 m?",
      },
      {
        value: 86400 * Math.exp(-1 / yearDepth),
        hint: "That is by how much the swing has shrunk, not how late it comes.",
      },
    ],
    explanation:
      "Depth over penetration depth is the lag in radians; multiply by 365/2π for days. The ground " +
      "at tube depth is coldest weeks after the air is.",
  },
  {
    id: "soil.freezing",
    asked: "the heat of freezing",
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
      {
        value: 0.75 * 1000 * 334 / KILOJOULES,
        hint: "That is what is not water: which share freezes?",
      },
      { value: 25 * 1000 * 334 / KILOJOULES, hint: "25 % is a quarter, not twenty-five." },
      {
        value: 0.25 * 1000 * 2501 / KILOJOULES,
        hint: "That is the heat of evaporating it: the heat of fusion is in the question.",
      },
      {
        value: 0.25 * 917 * 334 / KILOJOULES,
        hint: "917 kg/m³ is ice: the volume given is of water before it freezes.",
      },
      { value: 334 / KILOJOULES, hint: "That is one kilogram: how many are there?" },
      { value: 1000 * 334 / 0.25 / KILOJOULES, hint: "Times the share, not divided by it." },
    ],
    explanation: "0.25 · 1000 kg · 334 kJ/kg. As much as cooling the same soil by some forty " +
      "kelvin: wet ground freezes slowly, and thaws slowly.",
  },
];
