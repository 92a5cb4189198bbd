/** What those who dig, cut, drill and test get: materials, cuts, holes, the sheet of commissioning. @module */
import type { MonitoringPlan } from "../../measured/mod.ts";
import type { ChapterResults } from "../../study/mod.ts";
import { asSold, showNumber } from "../../units/mod.ts";
import type { CutCoil, MaterialQuantity } from "../../worth/mod.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { forReport } from "../kit/layout.ts";
import { readersUnits, shown, shownBoth, shownNumber } from "../kit/reader.ts";
import { paragraph, table } from "../kit/table.ts";
import { commissioningSteps } from "../measured/monitoring.ts";

/** An amount with its unit as the reader buys it. */
function amountText(amount: number, unit: string): string {
  const sold = asSold(amount, unit, readersUnits());
  const whole = /^pieces?\b/.test(sold.unit) || Number.isInteger(sold.amount);
  return `${showNumber(sold.amount, whole ? 0 : 1)}\u00a0${sold.unit}`;
}

/** Everything to buy and do, part by part; tick what has come. */
export function materialsTable({ worth }: Pick<ChapterResults, "worth">): DisplayItem {
  return forReport(() =>
    table(worth.quantities, [
      { head: "part", value: ({ part }) => part },
      { head: "item", value: ({ item }) => item },
      {
        head: "to order",
        value: (row: MaterialQuantity) => amountText(row.order, row.unit),
        right: true,
      },
      {
        head: "net",
        value: (row: MaterialQuantity) => amountText(row.amount, row.unit),
        right: true,
      },
      { head: "from", value: ({ basis }) => basis },
      { head: "here", value: () => "☐" },
    ], "Bill of materials")
  );
}

/**
 * What is cut from each coil; a sentence where tube is sold by the metre.
 *
 * @param cuts coil by coil; null where no coil length is given
 */
export function coilTable(cuts: readonly CutCoil[] | null): DisplayItem {
  if (cuts === null) {
    return paragraph(
      "Tube is sold by the metre here: no coils to cut. Give worth.coilLength for a list of cuts.",
    );
  }
  return forReport(() =>
    table(cuts, [
      { head: "coil", value: ({ coil }) => coil, digits: 0 },
      { head: "cut", value: cutText },
      { head: "left over", value: ({ left }) => shown(left, "length"), right: true },
      { head: "done", value: () => "☐" },
    ], "Cuts of the coils; number the tubes as they are cut")
  );
}

/** "tubes 1, 2, 3: 22.0 m each" where all are alike, else piece by piece. */
function cutText({ pieces }: CutCoil): string {
  const [first] = pieces;
  if (first === undefined) return "–";
  const alike = pieces.every(({ length }) => Math.abs(length - first.length) < 1e-6);
  if (alike && pieces.length > 1) {
    return `tubes ${pieces.map(({ tube }) => tube).join(", ")}: ${
      shown(first.length, "length")
    } each`;
  }
  return pieces.map(({ tube, length }) => `tube ${tube}: ${shown(length, "length")}`).join("; ");
}

/** Speeds to be measured before the pit is filled, with room to write. */
export function commissioningSheet(
  { commissioning }: Pick<MonitoringPlan, "commissioning">,
): DisplayItem {
  const { tubes, reading } = commissioning;
  const speed = (value: number) => shownNumber(value, "speed");
  return forReport(() =>
    table(
      tubes,
      [
        { head: "tube", value: ({ tube }) => tube, digits: 0 },
        {
          head: "header pair",
          value: ({ group }) => group,
          digits: 0,
        },
        { head: "depth", value: ({ depth }) => depth, kind: "depth" },
        { head: "planned", value: (row) => row.speed, kind: "speed" },
        {
          head: "least … most",
          value: (row) => `${speed(row.least)} … ${speed(row.most)}`,
          right: true,
        },
        { head: "measured before backfill", value: () => "" },
        { head: "after backfill", value: () => "" },
        { head: "passes", value: () => "☐" },
      ],
      `Air speed of every tube; the limits hold ${
        shown(reading, "share")
      } of reading error. Scale ` +
        "the readings of the day so that their mean is the plan's, then judge each",
    )
  );
}

/** The fan's point as planned, with room for what was measured. */
export function fanSheet(
  { fan, headers }: Pick<ChapterResults, "fan" | "headers">,
): DisplayItem {
  const rows = [
    ["air flow", shown(fan.airFlow, "airFlow")],
    ["static pressure of the fan", shown(fan.pressure, "pressure")],
    ["of which headers and tubes", shown(headers.pressureDrop, "pressure")],
    ["electric power", `${showNumber(fan.power, 0)}\u00a0W`],
  ] as const;
  return forReport(() =>
    table(rows, [
      { head: "at the design flow, filter clean", value: ([name]) => name },
      { head: "planned", value: ([, value]) => value, right: true },
      { head: "measured", value: () => "" },
      { head: "within a tenth", value: () => "☐" },
    ], "The fan at its point")
  );
}

/** Tests in their order. */
export function commissioningTests(plan: MonitoringPlan): DisplayItem {
  return forReport(() => commissioningSteps(plan));
}

/**
 * Who did it and when; nothing is signed by this page.
 *
 * @param testPressure Pa, of the leak test
 */
export function signOff(testPressure: number): DisplayItem {
  const words = `Leak test at ${shownBoth(testPressure, "pressure")}: who did it, and with what`;
  const lines = ["tested by", "date", "instrument, last calibrated", "remarks"];
  const form = table(lines, [
    { head: "to fill in", value: (line) => line },
    { head: "by hand", value: () => "" },
  ], words);
  return { ...form, "text/html": `<div class="sign-off">${form["text/html"]}</div>` };
}
