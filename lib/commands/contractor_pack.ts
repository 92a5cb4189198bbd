/**
 * The pack for those who build: drawings to scale, bill of materials, cuts, sheet of commissioning.
 *
 * @module
 */
import { drawingInputs, drawSheets, type Paper, paperSize } from "../drawings/mod.ts";
import { type PageSection, renderPack } from "../press/mod.ts";
import { inReadersOrder } from "../show/kit/reader.ts";
import type { DisplayItem } from "../show/kit/figure.ts";
import * as report from "../show/report/mod.ts";
import { SHEET_TITLES } from "../show/study/drawing.ts";
import type { StudyRun } from "../study/mod.ts";
import { cutCoils } from "../worth/mod.ts";

/** File of the pack beside the report. */
export const CONTRACTOR_PACK = "contractor.html";

/** The pack of a run, as an HTML page of exact sheets. */
export async function contractorPack(run: StudyRun): Promise<string> {
  const { study } = run;
  const { heading, place } = study;
  const [results, plan] = [await run.results(), await run.monitoringPlan()];
  const paper: Paper = heading.units === "US" ? "Tabloid" : "A3";
  const drawings = Object.entries(drawSheets(drawingInputs(study, results), paper));
  const { count, length } = results.tubes;
  const coil = study.worth.coilLength;
  return renderPack({
    title: `To build: ${heading.title}`,
    facts: [place.name, heading.author],
    paper: paperSize(paper),
    sections: [
      section("materials", "Bill of materials", [report.materialsTable(results)]),
      section("cuts", "Cuts", [
        report.coilTable(coil === null ? null : cutCoils(count, length, coil)),
      ]),
      section("commissioning", "Commissioning, before the pit is filled", [
        report.commissioningTests(plan),
        report.fanSheet(results),
        report.commissioningSheet(plan),
        report.signOff(plan.commissioning.testPressure),
      ]),
      section("hazards", "Hazards of the work", [report.hazards()]),
    ],
    sheets: drawings.map(([file, svg]) => ({
      title: `${
        SHEET_TITLES[file.replace(`-${paper}.svg`, "") as keyof typeof SHEET_TITLES]
      }, ${paper}`,
      svg,
    })),
  });
}

function section(id: string, heading: string, items: readonly DisplayItem[]): PageSection {
  return { id, heading, html: items.map((item) => inReadersOrder(item["text/html"])).join("\n") };
}
