/** The exercises of the house chapter: textbook cases, not numbers of any study. @module */
import { shown } from "../kit/reader.ts";
import { dewPoint, saturationPressure } from "../../air/mod.ts";
import type { Exercise } from "../kit/exercise.ts";

const leakLoss = 961 / 3600 * 1207;
const skinLoss = 486 * 4.0;
const houseLoss = skinLoss + leakLoss;
const curtainTight = 1 / (1 / 3.3 + 0.35);
const curtainNight = 0.9 * curtainTight + 0.1 * 3.3;
const dripPoint = dewPoint(0.8 * saturationPressure(16));

/** Exercises of the house chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "house.loss",
    question: "A hoop house has 486 m² of double film (4.0 W/(m² K)) and 961 m³ of air changed " +
      "once an hour; air holds 1207 J/(m³ K). How much does it lose per kelvin? Answer as a " +
      'conductance, such as "500 W/K".',
    kind: "conductance",
    answer: houseLoss,
    tolerance: 0.02,
    slips: [
      { value: skinLoss, hint: "That is the skin alone; leakage is missing." },
      { value: leakLoss, hint: "That is the leakage alone; the skin is missing." },
      { value: skinLoss + 961 * 1207, hint: "One air change an hour is 1/3600 per second." },
    ],
    explanation:
      "486·4.0 + 961/3600·1207. The film loses six times as much as the leaks: know this " +
      "before counting tubes.",
  },
  {
    id: "house.night",
    question:
      "The same house is held 15 K above the outdoors for 14 hours. How much heat is that? " +
      'Answer as energy, such as "100 kWh".',
    kind: "energy",
    answer: houseLoss * 15 * 14 / 1000,
    tolerance: 0.02,
    slips: [
      { value: houseLoss * 15 / 1000, hint: "That is the power in kW; it lasts 14 hours." },
      { value: houseLoss * 15 * 14, hint: "That is in Wh: a thousand Wh make a kWh." },
      { value: houseLoss * 14 / 1000, hint: "The 15 K is missing." },
    ],
    explanation: "Loss coefficient times temperature difference times hours. A store covers part " +
      "of one such night, not a week of them.",
  },
  {
    id: "house.curtain",
    question:
      "Twin-wall sheet loses 3.3 W/(m² K). A night curtain adds 0.35 m² K/W over the whole " +
      "sheet, but a tenth of its area leaks at the edges as if it were open. How much does the sheet " +
      'lose at night? Answer such as "2.0 W/(m2 K)".',
    kind: "transmittance",
    answer: curtainNight,
    tolerance: 0.02,
    slips: [
      { value: curtainTight, hint: "That is a curtain without leaks: a tenth stays at 3.3." },
      {
        value: 3.3 - 1 / 0.35,
        hint: "U-values cannot be subtracted: add resistances, 1/3.3 + 0.35.",
      },
      { value: 3.3 * 0.9, hint: "The cloth's resistance is missing." },
    ],
    explanation:
      "0.9/(1/3.3 + 0.35) + 0.1·3.3. The leaks alone are a fifth of the remaining loss: seal " +
      "the edges.",
  },
  {
    id: "house.drip",
    question:
      "In the evening the house air is at 16 degC and 80 % humidity, and the inside of the cover is " +
      'at 9 degC. Does it drip? Answer "yes" or "no".',
    kind: "choice",
    answer: "yes",
    tolerance: 0,
    slips: [{
      value: "no",
      hint: "Find the dew point of the air: 80 % of the vapour pressure at 16 degC.",
    }],
    explanation:
      `The dew point is ${shown(dripPoint, "temperature")}, warmer than the cover. A second ` +
      "layer keeps the inside warmer and drips less, and then the air stays damper.",
  },
  {
    id: "house.first",
    question:
      "Foam strips and tape costing 150 save 900 kWh a year; a curtain costing 2400 saves 6000 kWh " +
      'a year. Which saves more per unit of money? Answer "sealing" or "curtain".',
    kind: "choice",
    answer: "sealing",
    tolerance: 0,
    slips: [{
      value: "curtain",
      hint: "It saves more in total; divide what each saves by what it costs.",
    }],
    explanation:
      "6 kWh against 2.5 kWh a year per unit of money. Do it first, then recalculate the curtain " +
      "for the sealed house. The prices are invented: use your own quotes.",
  },
];
