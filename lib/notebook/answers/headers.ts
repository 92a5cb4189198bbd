/** What the headers chapter answers. @module */
import { type DisplayItem, showBoth, showSi } from "../../charts/mod.ts";
import type { HeadersInputs, HeadersResult } from "../../headers/types.ts";
import type { TubesResult } from "../../tubes/types.ts";
import { answer, type Light } from "../answer.ts";

const LAYOUT_WORDS: Readonly<Record<HeadersInputs["layout"], string>> = {
  Z: "fed at one end, drawn off at the opposite end",
  U: "fed and drawn off at the same end",
  centre: "fed in the middle",
  "two-ended": "fed at both ends",
};

/** The answer card. */
export function headersAnswer(
  result: HeadersResult,
  inputs: HeadersInputs,
  tubes: TubesResult,
): DisplayItem {
  const outside = [...result.shares].filter((share) => Math.abs(share - 1) > 0.1).length;
  const light: Light = outside === 0 ? "yes" : outside <= tubes.count / 10 ? "partly" : "no";
  const least = result.shares.indexOf(result.flowMin);
  return answer({
    light,
    answer:
      `Headers of ${showBoth(result.diameter, "diameter")}, ${LAYOUT_WORDS[inputs.layout]}: ` +
      `tubes carry ${showSi(result.flowMin, "share")} to ${
        showSi(result.flowMax, "share")
      } of the mean, ${outside} of ${tubes.count} lie outside ±10 %; the field gives ${
        showSi(result.heatFactor, "sharePrecise")
      } of the heat of an even one.`,
    range:
      `Workmanship is not in these numbers: ends pushed in to different depths and burrs spread ` +
      `the flows further. Measure each tube before backfilling.`,
    drivenBy: `the area of the tubes over that of the header, ${result.areaRatio.toFixed(2)}` +
      (least >= 0 ? `; tube ${least + 1} gets least.` : "."),
    changesWith:
      "the header were wider, the tubes longer, or the feed moved. A faster fan changes " +
      "nothing: all these losses go with the square of the air speed.",
  });
}
