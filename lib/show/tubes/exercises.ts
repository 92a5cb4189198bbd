/** The exercises of the tubes chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

const tubeHead = 1.2 * 3 ** 2 / 2;
const tubeUnits = 6 * Math.PI * 0.102 * 15 / (1207 * 2 * Math.PI * 0.102 ** 2 / 4);
const halfCylinder = Math.PI * 4.572 ** 2 / 2 * 29.26;

/** Exercises of the tubes chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "tubes.pressure",
    asked: "the pressure drop",
    question:
      "Air of 1.2 kg/m³ flows at 3 m/s through 29 m of corrugated tube, 0.102 m inside diameter, " +
      "friction factor 0.06, inlet and exit 1.5 velocity heads. What is the pressure drop? Answer " +
      'such as "20 Pa".',
    kind: "pressure",
    answer: (0.06 * 29 / 0.102 + 1.5) * tubeHead,
    tolerance: 0.02,
    slips: [
      { value: (0.06 * 29 / 0.102 + 1.5) * tubeHead * 2, hint: "The velocity head is ρ·v²/2." },
      { value: 0.06 * 29 / 0.102 * tubeHead, hint: "Inlet and exit are missing." },
      { value: (0.015 * 29 / 0.102 + 1.5) * tubeHead, hint: "The factor 0.06 is already Darcy's." },
      {
        value: (0.24 * 29 / 0.102 + 1.5) * tubeHead,
        hint: "0.06 is Darcy's factor: not to be taken four times.",
      },
      { value: (0.06 * 29 / 0.102 + 1.5) * 1.2 * 3 / 2, hint: "The speed goes in squared." },
      { value: (0.06 * 29 / 0.102 + 1.5) * 3 ** 2 / 2, hint: "The density of the air is missing." },
      {
        value: (0.06 * 29 / 0.051 + 1.5) * tubeHead,
        hint: "The length is counted in diameters, not in radii.",
      },
      {
        value: 1.5 * tubeHead,
        hint:
          "That is inlet and exit alone: friction is missing, or its diameter went in in millimetres.",
      },
      {
        value: (0.06 / 0.102 + 1.5) * tubeHead,
        hint: "That is the friction of one metre: the tube is longer.",
      },
      { value: tubeHead, hint: "That is one velocity head: how many of them does the tube take?" },
    ],
    explanation: "(f·L/D + 1.5)·ρ·v²/2. A smooth tube would need less than half.",
  },
  {
    id: "tubes.effectiveness",
    asked: "the share",
    question: "15 m of the same tube at 2 m/s, film coefficient 6 W/(m² K), air 1207 J/(m³ K), " +
      "wall at uniform temperature: what share of the possible temperature change does the air undergo? " +
      'Answer as a share, such as "50 %".',
    kind: "share",
    answer: 1 - Math.exp(-tubeUnits),
    tolerance: 0.02,
    slips: [
      {
        value: tubeUnits,
        hint: "That is the number of transfer units; the share is 1 − exp(−NTU).",
      },
      { value: Math.exp(-tubeUnits), hint: "That is the remainder: subtract it from one." },
      {
        value: 1 - Math.exp(-tubeUnits * 2 / 3),
        hint: "That is at the 3 m/s of the question before.",
      },
      {
        value: 1 - Math.exp(-tubeUnits / 2),
        hint: "Half the transfer units: a radius in the wall's area, which is π·D·L?",
      },
      {
        value: 1 - Math.exp(-2 * tubeUnits),
        hint: "Twice the transfer units: a speed of 1 m/s, or a half too many in the flow?",
      },
      {
        value: 1 - Math.exp(-tubeUnits / 4),
        hint: "The cross-section is π·D²/4, and the 4 is missing.",
      },
      {
        value: tubeUnits / (1 + tubeUnits),
        hint: "That is for two equal streams side by side; here the wall keeps its temperature.",
      },
      {
        value: 1 - Math.exp(-tubeUnits * 1.2),
        hint: "The heat capacity is given for a cubic metre: the density is in it already.",
      },
      {
        value: Math.exp(tubeUnits),
        hint: "The exponent has a minus: the difference shrinks along the tube.",
      },
      {
        value: 1 - Math.exp(-tubeUnits / 15),
        hint: "That is after one metre: the tube is longer.",
      },
    ],
    explanation:
      "1 − exp(−NTU). Twice the length brings it near one, but does not double the heat.",
  },
  {
    id: "tubes.count",
    asked: "the number of tubes",
    question:
      "A half-cylinder house of 4.572 m radius and 29.26 m length is to pass its air volume " +
      "5 times an hour through tubes of 0.102 m at 2 m/s. How many tubes does that take? Answer as a plain " +
      "number.",
    kind: "number",
    counted: ["tubes"],
    answer: halfCylinder * 5 / 3600 / (2 * Math.PI * 0.102 ** 2 / 4),
    tolerance: 0.015,
    slips: [
      {
        value: 2 * halfCylinder * 5 / 3600 / (2 * Math.PI * 0.102 ** 2 / 4),
        hint: "That is the whole cylinder: only half of it is above ground.",
      },
      {
        value: halfCylinder * 5 / 3600 / (2 * Math.PI * 0.102 ** 2),
        hint: "The area of a circle is π·d²/4.",
      },
      {
        value: halfCylinder / 3600 / (2 * Math.PI * 0.102 ** 2 / 4),
        hint: "That is one air change an hour.",
      },
      {
        value: halfCylinder / 5 / 3600 / (2 * Math.PI * 0.102 ** 2 / 4),
        hint: "Five times an hour is more air, not a fifth of it.",
      },
      {
        value: halfCylinder * 5 / 60 / (2 * Math.PI * 0.102 ** 2 / 4),
        hint: "How many seconds has an hour?",
      },
      {
        value: halfCylinder * 5 / (2 * Math.PI * 0.102 ** 2 / 4),
        hint: "That moves the air five times a second: the seconds of an hour are missing.",
      },
      {
        value: halfCylinder * 5 / 3600 / 24 / (2 * Math.PI * 0.102 ** 2 / 4),
        hint: "The air is changed five times an hour, not a day.",
      },
      {
        value: Math.PI * 4.572 * 29.26 * 5 / 3600 / (2 * Math.PI * 0.102 ** 2 / 4),
        hint: "That starts from the area of the cover: the volume of the air is what passes.",
      },
      {
        value: halfCylinder / 29.26 * 5 / 3600 / (2 * Math.PI * 0.102 ** 2 / 4),
        hint: "That is for one metre of the house.",
      },
      {
        value: 2 * 4.572 ** 2 * 29.26 * 5 / 3600 / (2 * Math.PI * 0.102 ** 2 / 4),
        hint: "That is a box: the end is half a circle.",
      },
      {
        value: halfCylinder / 0.3048 ** 3 * 5 / 3600 / (2 * Math.PI * 0.102 ** 2 / 4),
        hint: "The volume is in cubic feet, all the rest in metres.",
      },
    ],
    explanation:
      "Volume · 5/3600 over the flow of one tube, to the nearest whole number. This buys " +
      "air flow, not heat: next, ask how much heat a night takes and how much a metre of tube stores.",
  },
];
