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
      {
        value: "twice",
        because: /\bflows?\b|\badd|\bsum\b|1\.0/,
        hint: "Flows side by side add up only while the pressure stays as it was.",
      },
      {
        value: "twice",
        because: /pressure|header|parallel/,
        hint:
          "Side by side they share the pressure; but what does the field ask for at twice the flow?",
      },
      {
        value: "twice",
        because: /power|watt|electric/,
        hint: "Twice the power, yes: where does it go as the flow rises?",
      },
      {
        value: "twice",
        because: /type|\balike\b|equal|identical/,
        hint: "Two of one type are twice one fan's curve; the field has a curve too.",
      },
      {
        value: "more",
        because: /pressure/,
        hint: "Pressure adds up for fans one behind the other; these stand side by side.",
      },
      {
        value: "more",
        because: /power|watt|electric/,
        hint: "Power buys pressure too, and that rises with the square of the flow.",
      },
      {
        value: "same",
        unoffered: true,
        hint: "Side by side the two can give more than one at any pressure below the highest.",
      },
      {
        value: "half",
        unoffered: true,
        hint: "A second fan does not take air away, if it has a damper of its own.",
      },
      {
        value: "four",
        unoffered: true,
        hint: "Four times is what the pressure would be at twice the flow.",
      },
      {
        value: "none",
        unoffered: true,
        hint: "They blow the same way, into one header: the air has a way to go.",
      },
    ],
    explanation:
      "The operating point moves up the fans' curves until field and fans match. On a field of high resistance " +
      "a second fan adds only a few per cent: spend the money on more tubes instead.",
  },
  {
    id: "fan.halfSpeed",
    asked: "the power",
    question:
      "By the fan laws, how much power does a 120 W fan take at half speed, ignoring motor " +
      'losses? Answer such as "50 W".',
    kind: "power",
    answer: 120 / 8,
    tolerance: 0.01,
    slips: [
      { value: 60, hint: "That is proportional to speed: only the flow is." },
      { value: 30, hint: "That is the square: it applies to pressure." },
      { value: 120, hint: "Slower blades move less air against less pressure." },
      { value: 120 / 16, hint: "One power of the speed too many." },
      { value: 120 * 8, hint: "That is at twice the speed." },
      {
        value: 120 / Math.SQRT2,
        hint: "A root is not in the fan laws: power rises faster than speed.",
      },
      { value: 120 - 120 / 8, hint: "That is what is saved: what does it still take?" },
      { value: 120 / 3, hint: "Not a third: the third power." },
      { value: 120 / 6, hint: "Twice three is not two to the third power." },
      { value: 1 / 8, hint: "That is the share that is left: of how many watts?" },
    ],
    explanation:
      "Power varies with the cube of the speed. Half the air for an eighth of the power, " +
      "and the air leaves the tubes closer to soil temperature.",
  },
  {
    id: "fan.density",
    asked: "the pressure",
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
      { value: 100 * (1 - 0.3), hint: "What the air is lighter by is a share of 1.2, not of 1." },
      { value: 100 * 0.3 / 1.2, hint: "That is what is lost: what is left?" },
      { value: 100 * 0.9, hint: "The curve was measured in air of 1.2, not of 1 kg/m³." },
      { value: 100 / 1.2, hint: "That is for air of 1 kg/m³: the thin air's density is missing." },
      { value: 100 * 1.2, hint: "Denser air would give more; this air is thinner." },
      {
        value: 100 / 0.9,
        hint: "Thin air gives less, and the density of the measured curve is missing.",
      },
      { value: 100 * Math.sqrt(0.9 / 1.2), hint: "No root: pressure varies with density itself." },
      {
        value: 100 * (1.2 / 0.9) ** 2,
        hint: "Inverted and squared: pressure varies with density itself.",
      },
    ],
    explanation: "Pressure varies with density. So does the resistance of the tubes: the flow in " +
      "m³/s hardly changes, but the heat it carries does.",
  },
];
