/** The exercises of the fan chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

/** Exercises of the fan chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "fan.twoFans",
    question:
      "One fan moves 0.5 m³/s through a tube field. A second one of the same type is placed " +
      "beside it, blowing into the same header. Together, do they move twice as much, less or more? Answer " +
      '"twice", "less" or "more".',
    kind: "choice",
    answer: "less",
    tolerance: 0,
    slips: [
      {
        value: "twice",
        hint: "Only if the field needed no more pressure at higher flow: it needs four times " +
          "as much at twice the flow.",
      },
      { value: "more", hint: "The field's resistance rises with flow; it does not fall." },
    ],
    explanation:
      "The operating point moves up the fans' curves until field and fans match. On a field of high resistance " +
      "a second fan adds only a few per cent: spend the money on more tubes instead.",
  },
  {
    id: "fan.halfSpeed",
    question:
      "By the fan laws, how much power does a 120 W fan take at half speed, ignoring motor " +
      'losses? Answer such as "50 W".',
    kind: "power",
    answer: 120 / 8,
    tolerance: 0.01,
    slips: [
      { value: 60, hint: "That is proportional to speed: only the flow is." },
      { value: 30, hint: "That is the square: it applies to pressure." },
    ],
    explanation:
      "Power varies with the cube of the speed. Half the air for an eighth of the power, " +
      "and the air leaves the tubes closer to soil temperature.",
  },
  {
    id: "fan.density",
    question:
      "A curve measured in air of 1.2 kg/m³ shows 100 Pa. What pressure does the same fan give at the " +
      'same flow and speed in thin air of 0.9 kg/m³? Answer such as "50 Pa".',
    kind: "pressure",
    answer: 75,
    tolerance: 0.01,
    slips: [
      { value: 100 * 1.2 / 0.9, hint: "Inverted: thin air gives less pressure." },
      { value: 100, hint: "The flow in m³/s stays the same, the pressure does not." },
      {
        value: 100 * (0.9 / 1.2) ** 2,
        hint: "Pressure varies with density itself, not its square.",
      },
    ],
    explanation: "Pressure varies with density. So does the resistance of the tubes: the flow in " +
      "m³/s hardly changes, but the heat it carries does.",
  },
];
