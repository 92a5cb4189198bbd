/** The exercises of the fan chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

/** Exercises of the fan chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "fan.twoFans",
    question: "One fan moves 0.5 m³/s through a tube field. A second one of the same kind is set " +
      "beside it, blowing into the same header. How much do both move? Answer " +
      '"twice", "less" or "more".',
    kind: "choice",
    answer: "less",
    tolerance: 0,
    slips: [
      {
        value: "twice",
        hint: "Only if the field asked for no more pressure at more flow: it asks for four times " +
          "as much at twice the flow.",
      },
      { value: "more", hint: "The field gets stiffer with more flow, not softer." },
    ],
    explanation:
      "The point slides up the fans' curves until field and fans agree. On a stiff field " +
      "a second fan brings a few per cent: spend on more tubes instead.",
  },
  {
    id: "fan.halfSpeed",
    question: "By the fan laws, what power does a fan of 120 W take at half speed, motor losses " +
      'left aside? Answer such as "50 W".',
    kind: "power",
    answer: 120 / 8,
    tolerance: 0.01,
    slips: [
      { value: 60, hint: "That is in proportion to speed: only the flow is." },
      { value: 30, hint: "That is with the square: so goes the pressure." },
    ],
    explanation:
      "Power goes with the cube of the speed. Half the air for an eighth of the power, " +
      "and the air leaves the tubes closer to soil temperature.",
  },
  {
    id: "fan.density",
    question:
      "A curve measured in air of 1.2 kg/m³ shows 100 Pa. What does the same fan make at the " +
      'same flow and speed in thin air of 0.9 kg/m³? Answer such as "50 Pa".',
    kind: "pressure",
    answer: 75,
    tolerance: 0.01,
    slips: [
      { value: 100 * 1.2 / 0.9, hint: "Upside down: thin air gives less pressure." },
      { value: 100, hint: "The flow in m³/s stays the same, the pressure does not." },
      { value: 100 * (0.9 / 1.2) ** 2, hint: "Pressure goes with density itself, not its square." },
    ],
    explanation: "Pressure goes with density. So does the resistance of the tubes: the flow in " +
      "m³/s hardly changes, the heat it carries does.",
  },
];
