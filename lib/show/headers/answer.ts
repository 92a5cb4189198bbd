/** What the headers chapter answers. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { showNumber } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import type {
  HeadersInputs,
  HeaderVariant,
  SummarisedHeaders,
  WorkmanshipResult,
} from "../../headers/mod.ts";
import type { TubesResult } from "../../tubes/types.ts";
import { answerCard, type Light } from "../kit/answer.ts";
import { table } from "../kit/table.ts";

const LAYOUT_WORDS: Readonly<Record<HeadersInputs["layout"], string>> = {
  Z: "in at one end, out at the opposite end",
  U: "in and out at the same end",
  centre: "in and out in the middle",
  "two-ended": "in and out at both ends",
};

/** The answer card; the range takes carelessly set tube ends where they were drawn. */
export function answer(
  result: SummarisedHeaders,
  inputs: HeadersInputs,
  tubes: TubesResult,
  careless?: WorkmanshipResult,
): DisplayItem {
  const { outside, poorest } = result.summary;
  const light: Light = outside === 0 ? "yes" : outside <= tubes.count / 10 ? "partly" : "no";
  return answerCard({
    light,
    answer:
      `Headers of ${shownBoth(result.diameter, "smallLength")}, ${LAYOUT_WORDS[inputs.layout]}: ` +
      `tubes carry ${shown(result.flowMin, "share")} to ${
        shown(result.flowMax, "share")
      } of the mean, ${outside} of ${tubes.count} are outside ±10 %; the field gives ${
        shown(result.heatFactor, "sharePrecise")
      } of the heat of an even one.`,
    range: careless === undefined
      ? "Workmanship is not included: ends pushed in to different depths and burrs spread " +
        "the flows further."
      : `With carelessly set tube ends, the tube with least air carries ${
        shown(careless.flowMin.low, "share")
      } to ${shown(careless.flowMin.high, "share")} of the mean, the one with most up to ${
        shown(careless.flowMax.high, "share")
      } (nine in ten of ${careless.trials} random fields). Measure each tube before backfilling.`,
    drivenBy: `the ratio of total tube area to header area, ${
      showNumber(result.areaRatio, 2)
    }; tube ${poorest} gets least.`,
    changesWith:
      "the header were wider, the tubes longer, or the feed point moved. A faster fan changes " +
      "nothing: all these losses vary with the square of the air speed.",
  });
}

const LAYOUT_HEADS: Readonly<Record<HeadersInputs["layout"], string>> = {
  Z: "opposite ends (Z)",
  U: "same end (U)",
  centre: "middle",
  "two-ended": "both ends",
};

/** Least and greatest flow over the mean on headers of other sizes, one column for each layout. */
export function sizeTable(variants: readonly HeaderVariant[]): DisplayItem {
  const layouts = [...new Set(variants.map(({ layout }) => layout))];
  const sizes = variants.filter(({ layout }) => layout === layouts[0]);
  const shares = (size: HeaderVariant, layout: HeadersInputs["layout"]) => {
    const one = variants.find((row) => row.layout === layout && row.diameter === size.diameter);
    return one === undefined
      ? null
      : `${showNumber(one.flowMin, 2)} to ${showNumber(one.flowMax, 2)}`;
  };
  return table(sizes, [
    { head: "inside", value: (row) => row.diameter, kind: "smallLength" },
    { head: "tube area over header area", value: (row) => row.areaRatio, digits: 2 },
    ...layouts.map((layout) => ({
      head: LAYOUT_HEADS[layout],
      value: (row: HeaderVariant) => shares(row, layout),
      right: true,
    })),
  ], "Smallest and largest tube flow over the mean on other headers");
}
