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
    question:
      "Air at 28 degC and 80 % humidity is cooled to 18 degC and leaves saturated, at standard pressure. " +
      'What share of the heat it gives up comes from condensing water? Answer such as "30 %".',
    kind: "share",
    answer: latentShare,
    tolerance: 0.03,
    slips: [
      { value: 1 - latentShare, hint: "That is the sensible share." },
      {
        value: latentShare / (1 - latentShare),
        hint: "That is latent over sensible; the question asks for " +
          "latent over total.",
      },
    ],
    explanation:
      "More than half. Drier air at the same temperature gives far less; say which you " +
      "mean when you quote a figure.",
  },
  {
    id: "store.cop",
    question:
      "In a year 20000 kWh go into a store, 12000 kWh come back and the fan uses 1000 kWh. How " +
      "many kWh come back per kWh of fan electricity? Answer as a plain number.",
    kind: "number",
    counted: ["kWh/kWh", "kWh"],
    answer: 12,
    tolerance: 0.01,
    slips: [
      { value: 32, hint: "Adding heat in and heat out counts the same heat twice." },
      { value: 20, hint: "That is what goes in; only what comes back serves the house." },
      { value: 0.6, hint: "That is the recovery: heat out over heat in." },
    ],
    explanation:
      "12000/1000. Even this is gross: the bare floor would have given part of it too, " +
      "so always look at the run with the fan always off.",
  },
  {
    id: "store.gross",
    question:
      "A store gives back 9000 kWh a year. Holding the set point takes 8000 kWh with it and " +
      "11500 kWh with its fan always off; the fan uses 900 kWh. How much heat does the store save a " +
      'heater? Answer such as "500 kWh".',
    kind: "energy",
    answer: 3500,
    tolerance: 0.005,
    slips: [
      {
        value: 9000,
        hint: "That is what comes out of the tubes. The bare floor would have given part of it " +
          "too, and part comes when no heat is needed.",
      },
      {
        value: 2600,
        hint: "That is heat minus electricity: also a fair number, but the question asks for heat.",
      },
      { value: 8000, hint: "That is what a heater must still supply." },
    ],
    explanation:
      "11500 − 8000. The fan's 900 kWh have their own price: count them against the saving.",
  },
  {
    id: "store.season",
    question:
      "From January to March a store gives back 4000 kWh: 1700 kWh charged in the same months, " +
      "250 kWh in earlier quarters, and the rest from ground that was never charged. What share was " +
      'carried over from earlier quarters? Answer such as "30 %".',
    kind: "share",
    answer: 250 / 4000,
    tolerance: 0.02,
    slips: [
      { value: 2300 / 4000, hint: "The ground's own warmth was there without any tubes." },
      { value: 1700 / 4000, hint: "That is the heat from the same quarter." },
      {
        value: 250 / 1950,
        hint:
          "That is the share of the heat charged; the question asks for the share of all heat given back.",
      },
    ],
    explanation: "250/4000. More comes from ground that nobody charged than from last summer.",
  },
  {
    id: "store.spell",
    question:
      "A store can still give 600 kWh before it is empty. In a sunless spell the house needs 14 kW " +
      "of heat and the store gives 3 kW at first. Compared with a house without a " +
      "store, can the heater be smaller, must it be the same size, or is none needed? Answer smaller, same or none.",
    kind: "choice",
    answer: "same",
    tolerance: 0,
    slips: [
      {
        value: "smaller",
        hint:
          "Only in the first days. Size the heater for the end of the spell, when the store is " +
          "empty, and for the night on which its fan fails.",
      },
      { value: "none", hint: "3 kW is not 14 kW, not even in the first hour." },
    ],
    explanation:
      "It must heat the house alone at the end of the spell. The store saves fuel, not heater size.",
  },
];
