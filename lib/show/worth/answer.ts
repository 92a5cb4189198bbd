/** What the worth chapter answers. @module */
import type { Figures } from "../../basics/mod.ts";
import type { StoreResult } from "../../store/mod.ts";
import { showNumber } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import type { VerdictReason, VerdictWord, WorthResult } from "../../worth/mod.ts";
import { answerCard, type Light } from "../kit/answer.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { killingText } from "../store/crop_words.ts";
import { moneyText, priceText, yearsText } from "./money_words.ts";
import { oddsLine } from "./odds_line.ts";

/** How well a verdict meets the wish to dig. */
export const VERDICT_LIGHTS: Readonly<Record<VerdictWord, Light>> = {
  dig: "yes",
  "not yet": "partly",
  no: "no",
};

/**
 * The verdict card: dig, not yet or no, with the reasons that decided it, and the odds.
 *
 * @param worth result of the worth chapter
 * @param store result of the store chapter
 * @param figures of the run: the odds as far as they are counted
 */
export function answer(worth: WorthResult, store: StoreResult, figures: Figures): DisplayItem {
  const { verdict, earnings, currency } = worth;
  return answerCard({
    light: VERDICT_LIGHTS[verdict.word],
    answer: `${verdictSentence(worth)} The store saves ${
      shownBoth(store.savedHeat, "energy")
    } of heat a year for ${shown(store.backupFanEnergy, "electricity")} of electricity; ${
      killingText(store)
    }.`,
    ...(earnings === null ? {} : {
      range:
        `${bandWords(worth)}First cost ${
          moneyText(earnings.capitalOwnLabour, currency)
        } with the work by hand done ` +
        `for nothing, ${
          moneyText(earnings.capitalHiredLabour, currency)
        } with it hired. Heat saved ` +
        `costs ${priceText(earnings.costOfHeat, currency)}, heat from ${worth.fuel} ${
          priceText(worth.heatPrice, currency)
        }; simple payback: ${yearsText(earnings.simplePayback)}.`,
    }),
    more: [["Odds", oddsLine(figures)]],
    drivenBy: "heat saved less the fans' electricity, the price of fuel, and what digging costs.",
    changesWith: changesWith(worth),
  });
}

/** The verdict and its reason in one or two sentences, the word first. */
export function verdictSentence(worth: WorthResult): string {
  const { verdict, earnings, currency, fuel } = worth;
  const list = verdict.first.join(", ");
  const sentences: Readonly<Record<VerdictReason, string>> = {
    "saves no heat": "No: the store saves no heat in this house and climate.",
    faults: `Not yet: first mend the design: ${list}.`,
    "prices missing": `Not yet: no price for ${list}, so nobody can say whether it pays.`,
    "a heater alone costs less":
      `No: over the years a heater on ${fuel} alone costs ${
        moneyText(-(earnings?.netSavings ?? 0), currency)
      } less (present value).` +
      (list === "" ? "" : ` Do this first instead: ${list}.`),
    "another measure comes first":
      `Not yet: it pays (${
        moneyText(earnings?.netSavings, currency)
      } of present value), but ${list} ` +
      `saves a kilowatt-hour for less. Do that first, then run the study again.`,
    pays: `Dig: against a heater on ${fuel} alone it saves ${
      moneyText(earnings?.netSavings, currency)
    } of present value.`,
  };
  return sentences[verdict.reason];
}

function bandWords({ doubt, currency, verdict }: WorthResult): string {
  if (doubt === null) return "";
  return `Net savings between ${moneyText(doubt.netSavings[0], currency)} and ${
    moneyText(doubt.netSavings[1], currency)
  }; "${verdict.word}" would change in ${
    shown(doubt.chanceVerdictFlips, "share")
  } of the cases sampled. `;
}

/** What would turn the verdict. */
export function changesWith({ earnings, verdict, fuel }: WorthResult): string {
  if (earnings === null) return "every quantity had a price.";
  const factor = earnings.breakEvenFuel;
  if (factor === null || factor === 0) return "the store cost less to build or to run.";
  const times = showNumber(factor, 2);
  return verdict.word === "no"
    ? `the price of ${fuel} rose to ${times} times today's and all else stayed as it is.`
    : `the price of ${fuel} fell below ${times} times today's.`;
}
