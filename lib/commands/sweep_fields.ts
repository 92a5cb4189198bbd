/** What `deno task sweep` does about tube fields: lists what to try, and says which none beats. @module */
import { join } from "node:path";
import { alone, InputError } from "../basics/mod.ts";
import { startRun, type Study, type StudyRun } from "../study/mod.ts";
import { writeWhole } from "../study/results/write_whole.ts";
import {
  betterThanFirst,
  fieldSweepText,
  type FieldToTry,
  type JudgedRow,
  judgedRows,
  unbeatenText,
} from "../study/sweep/mod.ts";
import { showFigures } from "../units/mod.ts";
import { sievedFront, sieveSteps, spreadOver, worth } from "../worth/mod.ts";
import type { SweptTable } from "./sweep_doubt.ts";
import { complain, say } from "./terminal.ts";

/** Count of fields from the command line. */
export function readFieldCount(text: string): number {
  if (/^\d{1,4}$/.test(text) && Number(text) >= 1) return Number(text);
  throw new InputError(`Cannot use --fields "${text}": expected how many, 1 or more`);
}

/**
 * Text of a sweep file of fields that a quick estimate leaves: with headers and fans of their own where
 * the study has prices, else with those of the study.
 *
 * @param study checked study
 * @param count of fields besides its own
 */
export async function fieldsToTry(study: Study, count: number): Promise<string> {
  complain("the study as it is: computing, for the quick search of fields");
  const run = startRun(study);
  const front: readonly FieldToTry[] = study.worth.prices === null
    ? (await run.fieldSearch()).front
    : await sievedFields(study, run);
  if (front.length === 0) {
    throw new InputError(
      "Cannot try other fields: none is within the limits; notebook 07 says what fields are " +
        "refused for",
      { file: study.path },
    );
  }
  return fieldSweepText(study, spreadOver(front, count));
}

/** Fields of the search of designs, before any year is run. */
async function sievedFields(study: Study, run: StudyRun): Promise<readonly FieldToTry[]> {
  const [soil, tubes, headers, fan, store] = await Promise.all(
    [run.soil(), run.tubes(), run.headers(), run.fan(), run.store()] as const,
  );
  const question = worth.extras.designs.takes(study, { soil, tubes, headers, fan, store });
  return sievedFront(alone(sieveSteps(question))).map(({ choice, headers, speed }) => ({
    ...choice,
    air: { ...choice, ...headers, diameter: choice.header, speed },
  }));
}

/** Which fields no other beats, where the sweep changes the tube field and has what they are judged by. */
export async function tellFields(
  folder: string,
  { plan, manifest, rows }: SweptTable,
): Promise<void> {
  if (plan.form === "sample" || !plan.keys.some(({ key }) => key.startsWith("tubes."))) return;
  const judged = judgedRows(plan, manifest.figures, rows);
  if (judged.length < 2) return;
  await writeWhole(join(folder, "unbeaten.csv"), unbeatenText(plan, manifest.figures, judged));
  const money = manifest.figures.find(({ key }) => key === "worth.capital")!.unit;
  say("fields without a fault that no other beats in first cost and heat saved:");
  judged.filter(({ unbeatenByHeat }) => unbeatenByHeat)
    .toSorted((one, other) => one.capital - other.capital)
    .forEach((row) => say(`  ${rowWords(row, money)}`));
  const better = betterThanFirst(judged);
  const own = judged.find(({ row }) => row === 1);
  if (own !== undefined) {
    const beaten = better === null ? "no row betters it" : `row ${better.row} betters it`;
    say(`the study's own is ${rowWords(own, money)}; ${beaten} in both`);
  }
  say(`all fields, with the crop's hours: ${join(folder, "unbeaten.csv")}`);
}

function rowWords({ row, capital, savedHeat, cropHours, faults }: JudgedRow, money: string) {
  const faulty = faults === 0 ? "" : `, ${faults} ${faults === 1 ? "fault" : "faults"} to mend`;
  return `row ${row}: ${showFigures(capital, 3)} ${money}, saves ${
    showFigures(savedHeat, 3)
  } kWh, ` +
    `${showFigures(cropHours, 3)} h below the crop's limit${faulty}`;
}
