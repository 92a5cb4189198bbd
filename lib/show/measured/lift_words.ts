/** What the store adds in the night, in words. @module */
import type { Lift, TestedDifference } from "../../measured/mod.ts";
import { showNumber } from "../../units/mod.ts";
import { shown } from "../kit/reader.ts";
import { rangeText } from "./range_words.ts";

function chanceText(chance: number): string {
  return chance < 0.001 ? "less than 1 in 1000" : `${showNumber(100 * chance, 1)} in 100`;
}

/** One test in a sentence. */
export function testSentence(
  { value, real, chance, count, effectiveCount, ...range }: TestedDifference,
  against: string,
): string {
  return `Against ${against} its nights are ${shown(Math.abs(value), "temperatureDifference")} ${
    value >= 0 ? "warmer" : "colder"
  } (${rangeText({ value, ...range }, "temperatureDifference")}, ${
    showNumber(count, 0)
  } nights that ` +
    `tell as much as ${showNumber(effectiveCount, 0)} without ties); ${
      real
        ? `that is real: by luck alone it would come in ${chanceText(chance)} cases`
        : `that may be luck: without any store it would come in ${chanceText(chance)} cases`
    }.`;
}

/** The lift in a sentence or two. */
export function liftSentence({ control, fanOff }: Lift): string {
  const sentences = [
    ...(control === null ? [] : [testSentence(control, "the control house")]),
    ...(fanOff === null ? [] : [testSentence(fanOff, "nights with the fan kept off")]),
  ];
  return sentences.length === 0
    ? "Whether it warms the house cannot be told: there is neither a control house nor a time with " +
      "the fan kept off."
    : sentences.join(" ");
}
