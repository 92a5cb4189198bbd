/** What the tubes chapter answers. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { showNumber } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import { NIGHT_HOURS, type TubeCounts } from "../../store/mod.ts";
import type { SummarisedTubes, TubesResult } from "../../tubes/mod.ts";
import { answerCard } from "../kit/answer.ts";
import { numbers, table } from "../kit/table.ts";

/** The answer card; the range takes the published spread of film and friction. */
export function answer(result: SummarisedTubes): DisplayItem {
  const { effectiveness, pressureDrop } = result.summary.spread;
  const [poor, good] = effectiveness.map((value) => shown(value, "share"));
  const [low, high] = pressureDrop.map((value) => shownBoth(value, "pressure"));
  return answerCard({
    answer: `${result.count} tube${result.count === 1 ? "" : "s"} of ${
      shownBoth(result.diameter, "smallLength")
    }, ${shownBoth(result.length, "length")} long, at ${
      shownBoth(result.airSpeed, "speed")
    }: each has a pressure drop of ${
      shownBoth(result.pressureDrop, "pressure")
    } and brings the air ${shown(result.effectiveness, "share")} of the way to wall temperature.`,
    range: `Effectiveness ${poor} to ${good} (film ±10 %), pressure ${low} to ${high} (friction ` +
      `±14 %).`,
    drivenBy:
      `the number of transfer units, ${shown(result.transferUnits, "ratio")}, which grows with ` +
      `length and falls with air speed; the soil resists heat flow about as much as the air film does.`,
    changesWith: "the tubes were smooth (less pressure, same heat), fewer (faster air), crushed, " +
      "silted or full of water.",
  });
}

/** Number of tubes led by air flow and led by heat, side by side. */
export function countTable(counts: TubeCounts): DisplayItem {
  return table(
    counts.rows,
    [
      { head: "sized by", value: (row) => row.way },
      { head: "tubes", value: (row) => row.count, kind: "count" },
      { head: "total length", value: (row) => row.totalLength, kind: "length" },
    ],
    `One metre took in ${shown(counts.goodDay, "energy", 3)} on good days of the year, ${
      shown(counts.goodWinterDay, "energy", 3)
    } on good winter days; a design night of ${NIGHT_HOURS} h costs ${
      shown(counts.designNight, "energy")
    }`,
  );
}

/** The tube and how it lies. */
export function summaryTable(result: TubesResult): DisplayItem {
  return numbers([
    { label: "tube", value: result.product.name, note: result.product.source },
    { label: "inside diameter", value: result.diameter, kind: "smallLength" },
    { label: "number", value: result.count, kind: "count" },
    { label: "length per tube", value: result.length, kind: "length" },
    { label: "total length", value: result.totalLength, kind: "length" },
    { label: "flow per tube", value: result.flowPerTube, kind: "tubeFlow" },
    { label: "air speed", value: result.airSpeed, kind: "speed" },
    { label: "Reynolds number", value: showNumber(result.reynolds, 0) },
    { label: "friction factor (Darcy)", value: showNumber(result.frictionFactor, 4) },
    { label: "film coefficient, dry", value: result.filmCoefficient, kind: "transmittance" },
    { label: "transfer units", value: result.transferUnits, kind: "ratio" },
    { label: "effectiveness", value: result.effectiveness, kind: "share" },
    { label: "pressure drop", value: result.pressureDrop, kind: "pressure" },
  ]);
}

/** The same air through more and fewer tubes. */
export function countEffects(rows: readonly TubesResult[]): DisplayItem {
  return table(rows, [
    { head: "tubes", value: (row) => row.count, kind: "count" },
    { head: "air speed", value: (row) => row.airSpeed, kind: "speed" },
    { head: "pressure drop", value: (row) => row.pressureDrop, kind: "pressure" },
    { head: "effectiveness", value: (row) => row.effectiveness, kind: "share" },
  ], "The same air through fewer and more tubes");
}
