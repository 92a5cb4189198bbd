/** The exercises of the store chapter: textbook cases, not numbers of any study. @module */
import { humidityRatioFromRelativeHumidity, moistEnthalpy } from "../../air/mod.ts";
import { STANDARD_PRESSURE } from "../../basics/mod.ts";
import type { Exercise } from "../kit/exercise.ts";

const warmRatio = humidityRatioFromRelativeHumidity(28, 0.8, STANDARD_PRESSURE);
const coolRatio = humidityRatioFromRelativeHumidity(18, 1, STANDARD_PRESSURE);
const wholeDrop = moistEnthalpy(28, warmRatio) - moistEnthalpy(18, coolRatio);
const latentShare = 1 - (moistEnthalpy(28, coolRatio) - moistEnthalpy(18, coolRatio)) / wholeDrop;

/** Exercises of the store chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "store.latentShare",
    question: "Air of 28 degC and 80 % is cooled to 18 degC and saturated, at standard pressure. " +
      'Which share of the heat it gives up comes from condensing water? Answer such as "30 %".',
    kind: "share",
    answer: latentShare,
    tolerance: 0.03,
    slips: [
      { value: 1 - latentShare, hint: "That is the sensible share." },
      {
        value: latentShare / (1 - latentShare),
        hint: "That is latent over sensible; asked is " +
          "latent over all.",
      },
    ],
    explanation:
      "More than half. Drier air of the same temperature stores far less; say which you " +
      "mean when you quote a heat.",
  },
  {
    id: "store.cop",
    question:
      "In a year 20000 kWh go into a store, 12000 kWh come back, the fan takes 1000 kWh. How " +
      "many kWh come back for one of the fan? Answer as a plain number.",
    kind: "number",
    answer: 12,
    tolerance: 0.01,
    slips: [
      { value: 32, hint: "In and out added count the same heat twice." },
      { value: 20, hint: "That is what goes in; the house is served by what comes back." },
      { value: 0.6, hint: "That is the recovery: back over in." },
    ],
    explanation:
      "12000/1000. Even this is gross: part of it the bare floor would have given too, " +
      "so always look at the run with the fan never on.",
  },
  {
    id: "store.gross",
    question:
      "A store gives back 9000 kWh a year. Holding the set point takes 8000 kWh with it and " +
      "11500 kWh with its fan never on; the fan takes 900 kWh. How much heat does the store save a " +
      'heater? Answer such as "500 kWh".',
    kind: "energy",
    answer: 3500 * 3.6e6,
    tolerance: 0.005,
    slips: [
      {
        value: 9000 * 3.6e6,
        hint: "That is what comes out of the tubes. A part of it the bare floor would have given " +
          "too, a part comes when no heat is wanted.",
      },
      {
        value: 2600 * 3.6e6,
        hint: "That is heat less electricity: a fair number too, but asked is the heat.",
      },
      { value: 8000 * 3.6e6, hint: "That is what a heater must still give." },
    ],
    explanation:
      "11500 − 8000. The 900 kWh of the fan have their own price: count them against it.",
  },
  {
    id: "store.season",
    question:
      "From January to March a store gives back 4000 kWh: 1700 kWh put in during the same months, " +
      "250 kWh in earlier quarters, the rest out of ground that was never charged. Which share was " +
      'carried over from earlier quarters? Answer such as "30 %".',
    kind: "share",
    answer: 250 / 4000,
    tolerance: 0.02,
    slips: [
      { value: 2300 / 4000, hint: "The ground's own warmth was there without any tube." },
      { value: 1700 / 4000, hint: "That is the heat of the same quarter." },
      {
        value: 250 / 1950,
        hint: "That is the share of what was put in; asked is the share of all.",
      },
    ],
    explanation: "250/4000. More comes from ground that nobody charged than from last summer.",
  },
  {
    id: "store.spell",
    question:
      "A store can still give 600 kWh before it is empty. In a sunless spell the house needs 14 kW " +
      "of heat and the store gives 3 kW at first. Does a heater have to be smaller than without " +
      "store, as large, or is none needed? Answer smaller, same or none.",
    kind: "choice",
    answer: "same",
    tolerance: 0,
    slips: [
      {
        value: "smaller",
        hint:
          "Only on the first days. Size the heater for the end of the spell, when the store is " +
          "empty, and for the night on which its fan fails.",
      },
      { value: "none", hint: "3 kW are not 14 kW, not even in the first hour." },
    ],
    explanation: "It must carry the house alone at the end of the spell. The store saves its fuel.",
  },
];
