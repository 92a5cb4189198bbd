/** The exercises of the worth chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

/** Exercises of the worth chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "worth.payback",
    question:
      "A store costs 6000, saves fuel for 650 a year and takes electricity for 150 a year. " +
      'After how many years has it paid for itself, without interest? Answer such as "5".',
    kind: "number",
    answer: 12,
    tolerance: 0.01,
    counted: ["years", "year", "a"],
    slips: [
      { value: 6000 / 650, hint: "The fans' electricity has to be paid for as well." },
      { value: 6000 / 800, hint: "Electricity is spent, not saved: take it off the fuel." },
      { value: 6000 / 150, hint: "That divides by the electricity alone." },
    ],
    explanation: "6000/(650 − 150). Interest and the fan's next motor make it longer.",
  },
  {
    id: "worth.presentValue",
    question:
      "At a real rate of 3 % a year, what share of its amount is money worth that comes in " +
      'twelve years? Answer such as "50 %".',
    kind: "share",
    answer: 1.03 ** -12,
    tolerance: 0.01,
    slips: [
      { value: 1 - 12 * 0.03, hint: "That takes 3 % of the first amount each year; it compounds." },
      { value: 1.03 ** 12, hint: "The other way round: later money is worth less." },
      { value: 1 / (1 + 12 * 0.03), hint: "That is simple interest: it compounds." },
    ],
    explanation:
      "1/1.03¹² = 0.70. A fan bought again in twelve years weighs 70 % of one bought today.",
  },
  {
    id: "worth.rival",
    question:
      "The store saves a kilowatt-hour for 0.21, sealing the house one for 0.04, and heat " +
      'from the heater costs 0.18. What comes first? Answer "store", "sealing" or "heater".',
    kind: "choice",
    answer: "sealing",
    tolerance: 0,
    slips: [
      { value: "store", hint: "At 0.21 it costs more than the heat that it saves." },
      { value: "heater", hint: "Cheaper than the store, but is there nothing cheaper still?" },
    ],
    explanation:
      "Sealing saves heat for less than it costs to make. After it the house needs less heat, " +
      "so a store saves less too: run the study again before judging it.",
  },
  {
    id: "worth.chance",
    question:
      "A cold that kills the crop comes in one winter of ten. How likely is at least one such " +
      'winter in the next ten? Answer such as "50 %".',
    kind: "share",
    answer: 1 - 0.9 ** 10,
    tolerance: 0.01,
    slips: [
      { value: 1, hint: "Ten winters can pass without one: it is likely, not certain." },
      { value: 0.1, hint: "That is the chance of one winter alone." },
      { value: 0.9 ** 10, hint: "That is the chance that none of the ten is such a winter." },
    ],
    explanation: "1 − 0.9¹⁰ = 65 %. One winter in ten does not wait ten years.",
  },
  {
    id: "worth.ladder",
    question:
      "A house needs 10 000 kWh of heat a year. Sealing saves 3000 of them alone, one more layer " +
      "of glazing 4000 alone, and each saves the same share of whatever is still needed when it " +
      'comes. How much do both save together? Answer such as "5000 kWh".',
    kind: "energy",
    answer: 5800,
    tolerance: 0.01,
    slips: [
      { value: 7000, hint: "The second finds less heat left to save than the first." },
      { value: 4200, hint: "That is what is still needed, not what is saved." },
      { value: 2800, hint: "That is what the second saves after the first." },
    ],
    explanation:
      "30 % of 10 000, then 40 % of the 7000 left: 3000 + 2800. The order changes what each seems " +
      "to save, not the sum; so a ladder runs the year again after each step.",
  },
];
