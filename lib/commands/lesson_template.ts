/** A lesson to begin with: it runs, passes the check, and shows each part once. @module */
import type { Cell, Notebook } from "../press/mod.ts";

type Part = (id: string) => Cell;

const text = (source: string): Part => (id) => ({
  cell_type: "markdown",
  id,
  metadata: {},
  source,
});
const code = (source: string): Part => (id) => ({
  cell_type: "code",
  id,
  metadata: {},
  source,
  execution_count: null,
  outputs: [],
});

function partsOf(name: string): readonly Part[] {
  const title = name.replaceAll("-", " ").replace(/^./, (first) => first.toUpperCase());
  return [
    text(`# ${title}

**Which question does this lesson answer?**

_Aims:_ what the learner can do afterwards. _You should know:_ what is taken for granted. _Time:_
20 minutes.`),
    text(`## Change this

Write your name, so that the numbers of your exercises are your own, and run the notebook again.`),
    code(`import { currentRun, openLesson, show } from "winterground";
import * as soil from "winterground/soil";

const learner = "";
const lesson = await openLesson("${name}", learner);
const run = await currentRun();
const result = await run.soil();`),
    text(`## The formula

The wave of the year goes into the ground to the depth at which it has the e-th part of its swing,

$$d = \\sqrt{\\frac{a\\,P}{\\pi}}$$

with the diffusivity $a$ of the soil and the period $P$.`),
    text(`## The number of this study

The figure that the formula gives for this study's soil, and the chart behind it. Below the chart,
say what drives it: what would be larger or smaller in another soil?`),
    code(`await show(soil.profileChart(result));`),
    text(`## Exercise

Replace \`null\` by your answer with its unit, in quotes. \`"hint"\`, \`"second hint"\` and
\`"solution"\` help.`),
    code(`await show(lesson.exercise("depth", null));`),
    text(`## Score

How many are right so far; the count is kept in a file beside the lesson.`),
    code(`await show(await lesson.score());`),
  ];
}

/** The notebook of a new lesson. */
export function lessonNotebook(name: string): Notebook {
  const cells = partsOf(name).map((part, k) => part(`cell-${k + 1}`));
  // deno-lint-ignore camelcase -- a name of the notebook format
  const kernelspec = { display_name: "Deno", language: "typescript", name: "deno" };
  return { cells, metadata: { kernelspec }, nbformat: 4, nbformat_minor: 5 };
}

/** The exercises of a new lesson. */
export function lessonExercises(): string {
  return `# Exercises of the lesson. Names in {braces} are drawn for each learner; answers and slips are
# formulas with these names, in the unit given.
exercises:
  - id: depth
    question: >-
      A soil has a diffusivity of {a} mm²/s. At which depth has the wave of the year (365 days) the
      e-th part of its swing at the surface? Answer such as "1 m".
    kind: length
    numbers:
      a: { from: 0.3, to: 0.9, step: 0.05 }
    answer: sqrt(a * 1e-6 * 365 * 86400 / pi)
    unit: m
    tolerance: 0.02
    slips:
      - { answer: sqrt(a * 1e-6 * 365 * 86400), hint: "Pi stands below the root." }
      - { answer: a * 1e-6 * 365 * 86400 / pi, hint: "The root is missing." }
      - { answer: sqrt(a * 1e-6 * 86400 / pi), hint: "That is the wave of a day." }
      - { answer: sqrt(2 * a * 1e-6 * 365 * 86400 / pi), hint: "There is no 2 in it." }
    hints:
      - Which formula above has a depth on its left?
      - Write the diffusivity in m²/s and the year in seconds before you put them in.
    solution: >-
      a = {a}e-6 m²/s and P = 365 · 86400 s; d is the root of a P / pi.
    explanation: The depth goes with the root of the diffusivity - four times as much doubles it.
`;
}
