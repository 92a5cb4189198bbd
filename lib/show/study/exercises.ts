/** The exercises of the whole study: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

/** Exercises of the study's own page, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "study.balance",
    question:
      "A house that loses 800 W/K is held 20 K above the outdoors. Its soil gives it 5 kW and the sun " +
      'nothing. How much must a heater give? Answer such as "3 kW".',
    kind: "power",
    answer: 800 * 20 - 5000,
    tolerance: 0.005,
    slips: [
      { value: 800 * 20, hint: "That is what it loses: the soil gives a part of it." },
      { value: 800 * 20 + 5000, hint: "The soil gives heat: it does not take any." },
      { value: 5000, hint: "That is the soil's part; what is left for the heater?" },
      { value: 800, hint: "That is the loss for one kelvin." },
    ],
    explanation: "800 · 20 − 5000. Every chapter works on one of these three numbers.",
  },
  {
    id: "study.first",
    question:
      "A tube field costs 8000 and saves 4000 kWh a year; a night curtain costs 1500 and saves " +
      "3000 kWh a year. Which comes first? Answer tubes or curtain.",
    kind: "choice",
    answer: "curtain",
    tolerance: 0,
    slips: [{
      value: "tubes",
      hint: "They save more, at five times the price: what does each unit of money save?",
    }],
    explanation:
      "2 kWh a year per unit of money against 0.5. With the curtain up the house needs less heat, so " +
      "the tubes would save less: run the study again. The prices are invented.",
  },
];
