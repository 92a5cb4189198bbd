/** What is to be built: tubes, headers, fan, control, drawings. @module */
import { drawForReport, drawingInputs, type DrawingName } from "../../drawings/mod.ts";
import type { ChapterResults, Study } from "../../study/mod.ts";
import { showNumber } from "../../units/mod.ts";
import { curveChart } from "../fan/charts.ts";
import { tubeFlowChart } from "../headers/charts.ts";
import { type DisplayItem, pictureItem } from "../kit/figure.ts";
import { forReport } from "../kit/layout.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import { type NamedNumber, numbers, paragraph, table } from "../kit/table.ts";
import { controlTable } from "../store/tables.ts";
import { wide } from "./wide.ts";

/** Tubes, headers and fan in numbers. */
export function designTable(study: Study, { tubes, headers, fan }: ChapterResults): DisplayItem {
  const { layers, spacing, slope } = study.tubes;
  const rows: NamedNumber[] = [
    { label: "tube", value: tubes.product.name },
    { label: "tubes, in layers", value: `${tubes.count} in ${layers}` },
    { label: "length of a tube", value: tubes.length, kind: "length" },
    { label: "total length", value: tubes.totalLength, kind: "length" },
    { label: "spacing", value: spacing, kind: "depth" },
    { label: "fall", value: slope, kind: "sharePrecise" },
    { label: "flow of a tube", value: tubes.flowPerTube, kind: "tubeFlow" },
    { label: "air speed", value: tubes.airSpeed, kind: "speed" },
    { label: "effectiveness", value: tubes.effectiveness, kind: "share" },
    { label: "supply header, inside", value: headers.diameter, kind: "smallLength" },
    { label: "headers", value: `${study.headers.layout}, ${study.headers.inlet} inlets` },
    { label: "fan", value: `${study.fan.count} × ${fan.curve.name}` },
  ];
  return forReport(() => numbers(rows, "The store as planned"));
}

/** When the fan runs. */
export function control(study: Study): DisplayItem {
  return forReport(() => controlTable(study.store, "When the fan runs"));
}

const TITLES: Readonly<Record<DrawingName, string>> = {
  plan: "Plan of the tube field",
  section: "Section across the tubes",
  "long-section": "Section along the tubes",
  "header-holes": "Header holes, unrolled",
  "fan-and-riser": "Fan and riser, sketch",
};

/** A drawing cut out for the page; the sheets to scale are in the folder of drawings. */
export function drawing(
  name: DrawingName,
  study: Study,
  results: Pick<ChapterResults, "soil" | "tubes">,
): DisplayItem {
  const { count, length } = results.tubes;
  const item = pictureItem(drawForReport(drawingInputs(study, results), name), {
    title: TITLES[name],
    alt: `${TITLES[name]}: ${count} tubes of ${shownBoth(length, "length")}, with dimensions.`,
  });
  return wide(item, "wide drawing");
}

/** Most tubes whose flows are listed one by one. */
const MOST_LISTED = 60;
/** Tubes side by side in a line of the table. */
const ABREAST = 2;

/** The air of every tube, two side by side. */
export function flowTable({ headers }: ChapterResults): DisplayItem {
  const { tubes } = headers.summary;
  if (tubes.length > MOST_LISTED) {
    return paragraph(
      `The ${tubes.length} tubes are listed one by one in tables/headers-tubes.csv.`,
    );
  }
  const lines = Math.ceil(tubes.length / ABREAST);
  const rows = Array.from({ length: lines }, (_, line) => line);
  return forReport(() =>
    table(
      rows,
      Array.from({ length: ABREAST }, (_, column) => {
        const at = (line: number) => tubes[column * lines + line];
        return [
          { head: "tube", value: (line: number) => at(line)?.tube ?? "", digits: 0 },
          {
            head: "flow",
            value: (line: number) => at(line)?.flow ?? "",
            kind: "tubeFlow" as const,
          },
          { head: "to mean", value: (line: number) => at(line)?.share ?? "", digits: 2 },
        ];
      }).flat(),
      `Air of every tube: ${showNumber(headers.flowMin, 2)} to ${
        showNumber(headers.flowMax, 2)
      } of the mean, coefficient of variation ${showNumber(headers.unevenness, 3)}`,
    )
  );
}

/** The share of every tube. */
export function flowChart({ headers }: ChapterResults): DisplayItem {
  return forReport(() => tubeFlowChart(headers));
}

/** The fan at its point, with the clean and the dirty filter. */
export function fanTable({ fan, headers }: ChapterResults): DisplayItem {
  const { dirtyFilter: dirty } = fan;
  const rows: NamedNumber[] = [
    { label: "air flow", value: fan.airFlow, kind: "airFlow" },
    { label: "of the design flow", value: fan.flowRatio, kind: "share" },
    { label: "static pressure", value: fan.pressure, kind: "pressure" },
    { label: "of which headers and tubes", value: headers.pressureDrop, kind: "pressure" },
    { label: "electric power", value: `${showNumber(fan.power, 0)} W` },
    { label: "specific fan power", value: fan.specificPower, kind: "specificPower" },
    { label: "efficiency", value: fan.efficiency, kind: "share" },
    {
      label: "flow with a dirty filter",
      value: dirty === null ? "none: the curves no longer meet" : shown(dirty.airFlow, "airFlow"),
    },
    { label: "left of its pressure peak", value: fan.stalled ? "yes: it stalls" : "no" },
  ];
  return forReport(() => numbers(rows, "The fan at its point"));
}

/** Fan curve and system curve. */
export function fanChart({ fan }: ChapterResults, study: Study): DisplayItem {
  return forReport(() => curveChart(fan, study.fan));
}
