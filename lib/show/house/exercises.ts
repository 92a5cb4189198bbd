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
    asked: "the loss per kelvin",
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
      {
        value: 486 / 4.0 + leakLoss,
        hint: "Area times U-value: divided by it is right for a resistance only.",
      },
      { value: (486 + 961) * 4.0, hint: "A volume has no U-value: its air carries the heat away." },
      { value: skinLoss - leakLoss, hint: "Both ways lose heat: nothing is taken off." },
      { value: skinLoss / 2 + leakLoss, hint: "The U-value given is that of both films together." },
      { value: skinLoss + 961 / 60 * 1207, hint: "How many seconds has an hour?" },
    ],
    explanation:
      "486·4.0 + 961/3600·1207. The film loses six times as much as the leaks: know this " +
      "before counting tubes.",
  },
  {
    id: "house.night",
    asked: "the heat of the night",
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
      {
        value: skinLoss * 15 * 14 / 1000,
        hint: "Only the skin is in it: the loss of the question before had a second part.",
      },
      {
        value: leakLoss * 15 * 14 / 1000,
        hint: "Only the leaks are in it: the loss of the question before had a larger part.",
      },
      { value: houseLoss * 15 * 24 / 1000, hint: "That is a whole day: how long is the night?" },
      {
        value: houseLoss * 15 * 10 / 1000,
        hint: "Those are the hours of the day that are left: the night was given.",
      },
      {
        value: houseLoss * (15 + 273.15) * 14 / 1000,
        hint: "15 K is a difference of two temperatures: no 273 belongs to it.",
      },
      {
        value: houseLoss * 15 * 1.8 * 14 / 1000,
        hint: "The loss is for each kelvin: the 15 K need no turning into degF.",
      },
      { value: houseLoss * 15 / 14 / 1000, hint: "Power times hours, not divided by them." },
    ],
    explanation: "Loss coefficient times temperature difference times hours. A store covers part " +
      "of one such night, not a week of them.",
  },
  {
    id: "house.curtain",
    asked: "the loss at night",
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
      {
        value: 0.1 * curtainTight + 0.9 * 3.3,
        hint: "Nine tenths have the curtain before them, one tenth has not: they are exchanged.",
      },
      {
        value: 3.3 + 0.35,
        hint:
          "The curtain's number is a resistance: turn the sheet's U-value into one before adding.",
      },
      {
        value: 1 / (3.3 + 0.35),
        hint: "Two different things were added: turn the sheet's U-value into a resistance first.",
      },
      {
        value: 1 / (0.9 / curtainTight + 0.1 / 3.3),
        hint: "Areas side by side: share out their losses, not their resistances.",
      },
      {
        value: 1 / curtainTight,
        hint: "That is the resistance of the covered part: turn it round, and mind the edges.",
      },
      { value: 1 / curtainNight, hint: "That is a resistance: a loss was asked for." },
      { value: 0.9 * curtainTight, hint: "The open tenth loses heat too." },
      { value: 3.3, hint: "That is the sheet without its curtain." },
      {
        value: 3.3 * 0.35,
        hint: "A U-value times a resistance is a plain number: add resistances.",
      },
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
    }, {
      value: "no",
      because: /satur|100|humid|80|dry/,
      hint: "The air need not be saturated: the layer that touches the cover is cooled.",
    }, {
      value: "no",
      because: /freez|\bice\b|frost|above 0|zero/,
      hint: "Freezing makes it frost: water comes out long before.",
    }, {
      value: "no",
      because: /warm|heat/,
      hint: "Warm is not the question: is the cover colder than the dew point?",
    }, {
      value: "no",
      because: /vent|air flow|moving|fan/,
      hint: "Moving air brings more vapour to the cold cover.",
    }, {
      value: "no",
      because: /dew/,
      hint: "Work the dew point out again: is it above or below the cover?",
    }, {
      value: "no",
      because: /outdoor|outside|rain/,
      hint: "It is the house's own vapour, from inside.",
    }, {
      value: "no",
      because: /differen|7 ?k|small/,
      hint: "A few kelvins suffice when the air is humid: compare the dew point.",
    }, {
      value: "perhaps",
      unoffered: true,
      hint: "All that is needed is given: dew point and cover.",
    }, {
      value: "sometimes",
      unoffered: true,
      hint: "The question is about this one evening: compare dew point and cover.",
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
    }, {
      value: "curtain",
      because: /6000|more heat|total|most|in all/,
      hint: "That is the whole of its saving: over its price?",
    }, {
      value: "curtain",
      because: /900|little|small/,
      hint: "Little in all, but the price is little too.",
    }, {
      value: "curtain",
      because: /price|cost|2400|dear|cheap/,
      hint: "Put the saving above the price, not the price above the saving.",
    }, {
      value: "curtain",
      because: /night|always|winter/,
      hint: "When it saves does not matter here: a year's saving for each unit of money does.",
    }, {
      value: "curtain",
      because: /last|life|year/,
      hint: "How long each lasts is not given: compare a year's saving for each unit of money.",
    }, {
      value: "both",
      unoffered: true,
      hint: "One of them saves several times what the other does for each unit of money: divide.",
    }, {
      value: "neither",
      unoffered: true,
      hint: "Both save, each at its price: divide, and one is ahead.",
    }, {
      value: "equal",
      unoffered: true,
      hint: "Divide each saving by its price: the two differ by more than twice.",
    }, {
      value: "heater",
      unoffered: true,
      hint: "The question compares two ways of needing it less.",
    }],
    explanation:
      "6 kWh against 2.5 kWh a year per unit of money. Do it first, then recalculate the curtain " +
      "for the sealed house. The prices are invented: use your own quotes.",
  },
];
