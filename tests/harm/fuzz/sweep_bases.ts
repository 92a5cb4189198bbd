/** Sound sweep files. @module */

/** One of each form. */
export const SWEEPS: readonly string[] = [
  `chapters: [tubes, fan]
keys:
  tubes.length: [7 m, 8 m, 9 m]
  tubes.tube: [corrugated-4in, corrugated-3in]
  soil.moisture: {from: 15 %, to: 35 %, steps: 2}
`,
  `form: zip
keys:
  tubes.count: {from: 6, to: 9, steps: 4}
  house.curtain: [none, {coverage: 80 %}, {coverage: 90 %}, none]
  soil.layers.1.thickness: [0.1 m, 0.2 m, 0.3 m, 0.4 m]
`,
  `form: sample
rows: 64
points: latin
seed: 7
keys:
  soil.moisture: { from: 15 %, to: 35 % }
  house.leakage: { from: 0.3 1/h, to: 1 1/h }
  house.glazing: [twin-wall-8mm, twin-wall-16mm]
`,
];
