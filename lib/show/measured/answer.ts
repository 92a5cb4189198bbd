/** What the measured chapter answers. @module */
import type { Banded, MeasuredResult } from "../../measured/mod.ts";
import { AGREEMENT_LIMITS } from "../../measured/mod.ts";
import { showNumber } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import { answerCard, type Light } from "../kit/answer.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { liftSentence } from "./lift_words.ts";
import { rangeText } from "./range_words.ts";

/** The answer card: what the store gave, how surely, and whether the plan foresaw it. */
export function answer(result: MeasuredResult): DisplayItem {
  const { reason, season, plan } = result;
  if (season === null) {
    return answerCard({
      answer: `Nothing is measured: ${reason}.`,
      drivenBy: "what sensors say once the store is built.",
      changesWith:
        "logs were named in the study file: docs/measured.md says which sensors tell the heat.",
    });
  }
  const { heatIn, heatOut, cop, recovery, hours } = season.sums;
  return answerCard({
    ...(plan === null
      ? {}
      : { light: lightOf(plan.hourly.within, plan.rows.some((row) => row.apart)) }),
    answer: `In ${shown(hours, "hours")} of logged time the air left ${
      shownBoth(heatIn.value, "energy")
    } in the store and took ${shownBoth(heatOut.value, "energy")} back${copText(cop)}. ${
      liftSentence(season.lift)
    }${
      plan === null
        ? ""
        : ` ${apartSentence(plan.rows.filter((row) => row.apart).map(({ name }) => name))}`
    }`,
    range: `heat put in ${rangeText(heatIn, "energy")}, given back ${rangeText(heatOut, "energy")}${
      recovery === null ? "" : `, recovery ${rangeText(recovery, "share")}`
    }: what the sensors' stated accuracies allow in 95 of 100 cases.`,
    drivenBy:
      "the difference of intake and outlet, and above all the air flow: a flow that is off " +
      "by a tenth puts all heat off by a tenth.",
    changesWith: plan === null
      ? "more hours were logged."
      : `the plan were fitted to the log: hour by hour it is off by ${
        showNumber(100 * plan.hourly.nmbe, 1)
      } % on the mean and ${
        showNumber(100 * plan.hourly.cvRmse, 0)
      } % in scatter (a fitted model is ` +
        `held to ${showNumber(100 * AGREEMENT_LIMITS.hourly.nmbe, 0)} and ${
          showNumber(100 * AGREEMENT_LIMITS.hourly.cvRmse, 0)
        } %).`,
  });
}

/** Yes where the plan foresaw it, partly where only its sums did, no where neither. */
function lightOf(within: boolean, anyApart: boolean): Light {
  if (within) return anyApart ? "partly" : "yes";
  return "no";
}

function copText(cop: Banded | null): string {
  return cop === null ? "" : `, ${showNumber(cop.value, 1)} kilowatt-hours for each of the fans`;
}

function apartSentence(names: readonly string[]): string {
  return names.length === 0
    ? "Nothing that was measured lies outside what the plan foresaw."
    : `Not as planned: ${names.join(", ")}.`;
}
