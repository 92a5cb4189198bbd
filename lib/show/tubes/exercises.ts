/** The exercises of the tubes chapter: textbook cases, not numbers of any study. @module */
import type { Exercise } from "../kit/exercise.ts";

const tubeHead = 1.2 * 3 ** 2 / 2;
const tubeUnits = 6 * Math.PI * 0.102 * 15 / (1207 * 2 * Math.PI * 0.102 ** 2 / 4);
const halfCylinder = Math.PI * 4.572 ** 2 / 2 * 29.26;

/** Exercises of the tubes chapter, in the order of the notebook. */
export const EXERCISES: readonly Exercise[] = [
  {
    id: "tubes.pressure",
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
      { value: (0.24 * 29 / 0.102 + 1.5) * tubeHead, hint: "The factor 0.06 is already Darcy's." },
    ],
    explanation: "(f·L/D + 1.5)·ρ·v²/2. A smooth tube would need less than half.",
  },
  {
    id: "tubes.effectiveness",
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
    ],
    explanation:
      "1 − exp(−NTU). Twice the length brings it near one, but does not double the heat.",
  },
  {
    id: "tubes.count",
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
    ],
    explanation:
      "Volume · 5/3600 over the flow of one tube, to the nearest whole number. This buys " +
      "air flow, not heat: next, ask how much heat a night takes and how much a metre of tube stores.",
  },
];
