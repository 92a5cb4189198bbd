/** The exercises of the worth chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

/** Exercises of the worth chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "worth.payback",
    asked: "the payback in years",
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
      { value: 500 / 6000, hint: "Inverted: price over saving." },
      {
        value: 650 - 150,
        hint: "That is what is left of the saving each year: how often does it go into the price?",
      },
      {
        value: 6000 / (150 - 650),
        hint: "The saving less the electricity, not the other way round.",
      },
      { value: 144, hint: "Those are months: years are asked for." },
      { value: 6000 - 500, hint: "That is what is still owed after one year." },
      {
        value: -Math.log(1 - 12 * 0.03) / Math.log(1.03),
        hint: "That counts interest: the question leaves it out.",
      },
      {
        value: 6000 / 650 + 6000 / 150,
        hint: "Two paybacks do not add up: take the electricity off the saving first.",
      },
      {
        value: 6000 / 150 - 6000 / 650,
        hint: "Two paybacks cannot be subtracted: take the electricity off the saving first.",
      },
    ],
    explanation: "6000/(650 − 150). Interest and the fan's next motor make it longer.",
  },
  {
    id: "worth.presentValue",
    asked: "the present value",
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
      { value: 1 / 1.03, hint: "That is money of next year: it comes later." },
      { value: 1 - 1.03 ** -12, hint: "That is what waiting takes: what is left?" },
      {
        value: 1 + 12 * 0.03,
        hint: "That grows, and without compounding: later money is worth less, year on year.",
      },
      { value: 12 * 0.03, hint: "That is the rate times the years: what becomes of the amount?" },
      { value: 1.3 ** -12, hint: "3 % is 0.03, not 0.3." },
      {
        value: (1 - 1.03 ** -12) / 0.03,
        hint: "That is a payment every year for twelve years: this one comes once.",
      },
      {
        value: (1 - 1.03 ** -12) / 0.03 / 12,
        hint: "That is the mean of a payment every year: this one comes once, at the end.",
      },
      { value: 1.03 ** -144, hint: "The rate is for a year: the time was counted in months." },
      { value: 1 / 12, hint: "Not shared by the years: the rate takes its part each year." },
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
      {
        value: "store",
        because: /more|most|heat/,
        hint: "How much is not asked: what does each kilowatt-hour cost?",
      },
      {
        value: "store",
        because: /0?\.21/,
        hint: "The dearest of the three numbers is not the best: a low one is.",
      },
      {
        value: "store",
        because: /summer|sun|free/,
        hint: "The sun is free, the store is not: what does a kilowatt-hour from it cost?",
      },
      {
        value: "store",
        because: /fuel|gas|rise/,
        hint: "At today's price heat costs 0.18, and something costs still fewer cents.",
      },
      {
        value: "heater",
        because: /0?\.18|cheap/,
        hint: "Cheaper than from the store: look at the third number too.",
      },
      {
        value: "heater",
        because: /need|must|anyway|there/,
        hint:
          "It is there anyway; what makes each of its kilowatt-hours unnecessary at the lowest cost?",
      },
      {
        value: "heater",
        because: /safe|sure/,
        hint: "Nobody takes it away: the question is what to buy before the rest.",
      },
      {
        value: "both",
        unoffered: true,
        hint: "One comes before the others: rank the three numbers.",
      },
      {
        value: "neither",
        unoffered: true,
        hint: "One of the three costs least: rank the numbers.",
      },
      { value: "equal", unoffered: true, hint: "The three numbers differ by five times." },
    ],
    explanation:
      "Sealing saves heat for less than it costs to make. After it the house needs less heat, " +
      "so a store saves less too: run the study again before judging it.",
  },
  {
    id: "worth.chance",
    asked: "the chance",
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
      { value: 0.9, hint: "That is the chance that one winter passes without it." },
      { value: 0.1 ** 10, hint: "That is the chance that all ten are such winters." },
      {
        value: 10 * 0.1 * 0.9 ** 9,
        hint: "That is exactly one such winter: two or three count as well.",
      },
      { value: 1 - 0.9 ** 2, hint: "That is within two winters." },
      { value: 1 - 0.9 ** 9, hint: "That is within nine winters." },
      { value: 1 - 0.9 ** 11, hint: "That is within eleven winters." },
      {
        value: 1 - Math.exp(-1),
        hint: "That is for a cold that may come at any moment: these are ten whole winters.",
      },
      {
        value: 0.1 / 10,
        hint: "One winter in ten is the chance of each: it is not shared among the ten.",
      },
      {
        value: 1 - 0.9 ** 10 - 10 * 0.1 * 0.9 ** 9,
        hint: "That is two such winters or more: one counts as well.",
      },
    ],
    explanation: "1 − 0.9¹⁰ = 65 %. One winter in ten does not wait ten years.",
  },
  {
    id: "worth.ladder",
    asked: "the heat that both save",
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
      { value: 3000, hint: "That is sealing alone." },
      { value: 4000, hint: "That is the glazing alone." },
      { value: 1200, hint: "That is 30 % of 40 %: what both would count twice." },
      {
        value: 4000 + 0.3 * 4000,
        hint: "The second works on what is still needed, not on what the first has saved.",
      },
      { value: 3500, hint: "That is the mean of the two: they add up, though not in full." },
      { value: 1000, hint: "That is the difference of the two." },
      { value: 10000, hint: "Then nothing would be needed any more: each saves a share only." },
      {
        value: 0.3 * 6000,
        hint: "That is what sealing saves after the glazing: what do both save?",
      },
    ],
    explanation:
      "30 % of 10 000, then 40 % of the 7000 left: 3000 + 2800. The order changes what each seems " +
      "to save, not the sum; so a ladder runs the year again after each step.",
  },
];
