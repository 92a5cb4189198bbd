/** The exercises of the whole study: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

/** Exercises of the study's own page, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "study.balance",
    asked: "the heater's power",
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
      {
        value: 800 * 20 * 1.8 - 5000,
        hint:
          "The loss is for each kelvin, and 20 K is a difference in kelvins: nothing to turn into degF.",
      },
      {
        value: 800 * 20 / 1.8 - 5000,
        hint: "The 20 K are kelvins already, as the loss is: nothing to divide by 1.8.",
      },
      {
        value: 800 * (20 + 273.15) - 5000,
        hint: "20 K is a difference of two temperatures: no 273 belongs to it.",
      },
      { value: 5000 - 800, hint: "The loss is for one kelvin: how many are there?" },
      {
        value: (800 - 5000) * 20,
        hint: "Only the loss grows with the difference: the soil's part is in kilowatts already.",
      },
      {
        value: (800 * 20 - 5000) * 24,
        hint: "That is the heat of a day in Wh: a power is asked for.",
      },
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
    }, {
      value: "tubes",
      because: /4000|more|total|most/,
      hint: "More in all: for each unit of money?",
    }, {
      value: "tubes",
      because: /price|cost|8000|1500|dear/,
      hint: "Put the saving above the price, not the price above the saving.",
    }, {
      value: "tubes",
      because: /summer|sun|season|store/,
      hint: "Where the heat comes from does not matter here: what does each unit of money save?",
    }, {
      value: "tubes",
      because: /dig|ground|build|before/,
      hint: "The question is what pays first, not what is dug first.",
    }, {
      value: "tubes",
      because: /last|life|year/,
      hint: "How long each lasts is not given: compare a year's saving for each unit of money.",
    }, {
      value: "both",
      unoffered: true,
      hint: "With money for both the order still matters: the second finds less heat left to save.",
    }, {
      value: "neither",
      unoffered: true,
      hint: "Both save; one saves four times as much for each unit of money.",
    }, {
      value: "equal",
      unoffered: true,
      hint: "Divide each saving by its price: they differ by four times.",
    }, {
      value: "heater",
      unoffered: true,
      hint: "The question compares two ways of needing it less.",
    }],
    explanation:
      "2 kWh a year per unit of money against 0.5. With the curtain up the house needs less heat, so " +
      "the tubes would save less: run the study again. The prices are invented.",
  },
];
