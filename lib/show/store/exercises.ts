/** The exercises of the store chapter: textbook cases, not numbers of any study. @module */
import { humidityRatioFromRelativeHumidity, moistEnthalpy } from "../../air/mod.ts";
import { STANDARD_PRESSURE } from "../../basics/mod.ts";
import type { Exercise } from "../kit/exercise.ts";

const ratioAt = (degC: number, humidity: number) =>
  humidityRatioFromRelativeHumidity(degC, humidity, STANDARD_PRESSURE);
/** Share of the heat that goes with the water, from 28 to 18 degC, from one humidity to another. */
function shareBetween(warmHumidity: number, coolHumidity: number): number {
  const cool = ratioAt(18, coolHumidity);
  const end = moistEnthalpy(18, cool);
  return 1 - (moistEnthalpy(28, cool) - end) / (moistEnthalpy(28, ratioAt(28, warmHumidity)) - end);
}
const warmRatio = ratioAt(28, 0.8);
const coolRatio = ratioAt(18, 1);
const latentShare = shareBetween(0.8, 1);
/** J/kg; heats of freezing and of evaporation at 0 degC */
const [FUSION, EVAPORATION] = [334e3, 2501e3];
const fusionHeat = FUSION / EVAPORATION * latentShare;
const fusionShare = fusionHeat / (fusionHeat + 1 - latentShare);

/** Exercises of the store chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "store.latentShare",
    asked: "the latent share",
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
      {
        value: (warmRatio - coolRatio) / warmRatio,
        hint: "That is the share of the water that falls out, not of the heat.",
      },
      { value: 10 / 28, hint: "That is a share of the temperature: compare heats." },
      { value: 0.8 * latentShare, hint: "The 80 % are in the humidity ratio already." },
      { value: 0.2, hint: "What is missing to saturation at the start is no heat." },
      { value: fusionShare, hint: "With the heat of freezing: this water condenses." },
      { value: shareBetween(1, 1), hint: "That air starts saturated: this one starts at 80 %." },
      {
        value: shareBetween(0.8, 0.8),
        hint: "That air leaves at 80 %: this one leaves saturated.",
      },
    ],
    explanation:
      "More than half. Drier air at the same temperature gives far less; say which you " +
      "mean when you quote a figure.",
  },
  {
    id: "store.cop",
    asked: "the ratio",
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
      { value: 8, hint: "That is what stays in the ground or is lost, per kWh of electricity." },
      { value: 11, hint: "Nothing is taken off: heat that comes back over electricity." },
      { value: 1 / 12, hint: "Inverted: heat over electricity." },
      { value: 0.05, hint: "That is electricity over heat put in." },
      {
        value: 12 / 21,
        hint:
          "The electricity stands alone below the line, and the heat put in does not belong there.",
      },
      { value: 20 / 12, hint: "That is heat in over heat out: where is the electricity?" },
      { value: 13, hint: "Electricity is not heat that comes back: do not add it above the line." },
      { value: 12000, hint: "That is what comes back in all: for each kWh of electricity?" },
    ],
    explanation:
      "12000/1000. Even this is gross: the bare floor would have given part of it too, " +
      "so always look at the run with the fan always off.",
  },
  {
    id: "store.gross",
    asked: "the heat saved",
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
      {
        value: 11500,
        hint: "That is what a heater needs without the fan: with it, it still needs a part.",
      },
      {
        value: 3500 + 900,
        hint: "The fan's electricity is spent, and it is not heat: leave it out.",
      },
      {
        value: 11500 - 9000,
        hint:
          "What comes out of the tubes does not all replace the heater: compare the two heaters.",
      },
      {
        value: 9000 - 8000,
        hint:
          "What the tubes give less what the heater gives says nothing of a house without them.",
      },
      { value: 900, hint: "That is the fan's electricity." },
      { value: 11500 + 8000, hint: "The saving is the difference of the two." },
      {
        value: 9000 - 900,
        hint: "That starts from what comes out of the tubes: compare the two heaters.",
      },
      { value: 8000 - 11500, hint: "Turned round: without the fan less with the fan." },
    ],
    explanation:
      "11500 − 8000. The fan's 900 kWh have their own price: count them against the saving.",
  },
  {
    id: "store.season",
    asked: "the share carried over",
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
      {
        value: 1950 / 4000,
        hint: "That is all that was charged at any time: how much of it in earlier quarters?",
      },
      {
        value: 250 / 1700,
        hint:
          "That is against the same quarter's charge: the question asks for the share of all heat given back.",
      },
      {
        value: 250 / 2300,
        hint:
          "Over what was not charged in the same months: the question asks for the share of all.",
      },
      { value: 2050 / 4000, hint: "That is the part from ground that was never charged." },
      { value: 250 / 3750, hint: "Over all the rest: the 250 are a part of the whole themselves." },
      { value: 3750 / 4000, hint: "That is what was not carried over." },
      { value: 4000 / 250, hint: "Inverted: the part over the whole." },
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
      {
        value: "smaller",
        because: /600|first|begin|start/,
        hint: "How many hours do 600 kWh last, and how long is a sunless spell?",
      },
      {
        value: "smaller",
        because: /3 ?kw|11|14/,
        hint: "By 3 kW at first: how much by the last night?",
      },
      {
        value: "smaller",
        because: /average|mean|year|season/,
        hint: "A heater is sized by the worst hour, not by the mean.",
      },
      { value: "smaller", because: /fan/, hint: "And on the night on which the fan stands still?" },
      {
        value: "smaller",
        because: /cost|money|price|sav|fuel/,
        hint: "Saving fuel is one thing, the worst hour another.",
      },
      {
        value: "none",
        because: /600|enough/,
        hint: "600 kWh at 14 kW are gone in less than two days.",
      },
      { value: "none", because: /sun|day/, hint: "In this spell there is no sun to charge it." },
      {
        value: "larger",
        unoffered: true,
        hint: "An empty store takes no heat: why would the house need more than one without?",
      },
      {
        value: "half",
        unoffered: true,
        hint: "Which hour decides: one at the start, or one at the end of the spell?",
      },
    ],
    explanation:
      "It must heat the house alone at the end of the spell. The store saves fuel, not heater size.",
  },
];
