/** The monitoring plan: sensors, what each adds, shut tubes, commissioning, calendar. @module */
import * as Plot from "@observablehq/plot";
import {
  type BlockedState,
  type CertaintyRow,
  type CommissioningRow,
  LOG_QUANTITIES,
  type MonitoringPlan,
  type Quantity,
} from "../../measured/mod.ts";
import { showNumber } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { GREY, PALETTE } from "../kit/palette.ts";
import { paragraph, table } from "../kit/table.ts";

export type {
  Banded,
  BlockedLimits,
  BlockedState,
  CalendarMonth,
  CalendarTask,
  CalibrationRow,
  CertaintyRow,
  Commissioning,
  CommissioningRow,
  CommissioningStep,
  HeatSums,
  LogQuantityRule,
  MonitoredField,
  MonitoringPlan,
  PlanCertainty,
  PlannedSensor,
  Quantity,
  Sensor,
  SensorColumn,
  SensorKind,
  SensorListTable,
  SensorPlan,
  SensorPlanRequest,
} from "../../measured/mod.ts";

export { LOG_QUANTITIES } from "../../measured/mod.ts";

const finite = (value: number) => Number.isFinite(value) ? value : null;

/** The sensors with place, accuracy, interval, shield, reason and price. */
export function sensorListTable({ sensors }: MonitoringPlan): DisplayItem {
  return table(sensors.sensors, [
    { head: "sensor", value: ({ column }) => column.sensor.name },
    { head: "kind", value: ({ kind }) => kind.name },
    { head: "where", value: ({ column }) => column.sensor.zone },
    { head: "depth", value: ({ column }) => column.sensor.depth ?? null, kind: "depth" },
    { head: "accuracy", value: ({ column }) => accuracyText(column.sensor), right: true },
    { head: "every, min", value: ({ kind }) => kind.interval / 60, digits: 0 },
    { head: "shield and mounting", value: ({ kind }) => kind.shield },
    { head: "what for", value: ({ why }) => why },
    { head: "price", value: ({ price }) => price === null ? "not priced" : showNumber(price, 0) },
  ], "Sensors, before the first one is bought");
}

function accuracyText(
  { quantity, accuracy, relativeAccuracy }: {
    readonly quantity: Quantity;
    readonly accuracy: number;
    readonly relativeAccuracy?: number;
  },
): string {
  const { kind, unit } = LOG_QUANTITIES[quantity];
  const fixed = kind === "share"
    ? shown(accuracy, "sharePrecise")
    : `${showNumber(accuracy, 2)} ${kind === "temperature" ? "K" : unit}`;
  const share = `${shown(relativeAccuracy ?? 0, "sharePrecise")} of the reading`;
  if ((relativeAccuracy ?? 0) === 0) return fixed;
  return accuracy > 0 ? `${fixed} and ${share}` : share;
}

/** What the sensors cost together, as far as the price list says. */
export function sensorCostWords({ sensors }: MonitoringPlan): DisplayItem {
  const { cost, currency, unpriced, sensors: list } = sensors;
  const missing = unpriced.length === 0
    ? ""
    : ` No price: ${unpriced.join(", ")}; add lines with these ids to the price list.`;
  return paragraph(
    currency === null
      ? `${list.length} sensors. The study names no price list, so none is priced.`
      : `${list.length} sensors; those with a price cost ${
        showNumber(cost, 0)
      } ${currency}.${missing}`,
  );
}

/** Half widths of the 95 % bands with all sensors and with each left out. */
export function sensorWorthChart({ certainty }: MonitoringPlan): DisplayItem {
  const rows = certainty.heat.filter(({ heatOut }) => Number.isFinite(heatOut));
  const percent = ({ heatOut }: CertaintyRow) => 100 * heatOut;
  const [all] = rows;
  return figure({
    height: 40 + 30 * rows.length,
    marginLeft: 260,
    x: { label: "half of the 95 % band of the heat given back, %", grid: true },
    y: { label: null, domain: rows.map(({ name }) => name) },
    marks: [
      Plot.barX(rows, {
        y: "name",
        x: percent,
        fill: (_: CertaintyRow, k: number) => k === 0 ? PALETTE.air : PALETTE.warm,
      }),
      Plot.ruleX([0], { stroke: PALETTE.ink }),
    ],
    color: { type: "identity" },
  }, {
    title: "What does each sensor add?",
    alt: `With all sensors the heat given back in the year is known to ${
      all === undefined ? "nothing" : shown(all.heatOut, "sharePrecise")
    }; bars show how much wider the band is without each.`,
    note:
      "Errors that last all year, by the study's own hours; what one knows without a sensor is " +
      "a rule of the trade.",
    legend: [
      { label: "all sensors", colour: PALETTE.air },
      { label: "one thing less", colour: PALETTE.warm },
    ],
    table: dataTable(certainty.heat, [
      { head: "sensors", value: ({ name }) => name },
      { head: "heat put in", value: (row) => finite(row.heatIn), kind: "sharePrecise" },
      { head: "heat given back", value: (row) => finite(row.heatOut), kind: "sharePrecise" },
      { head: "COP", value: (row) => finite(row.cop), kind: "sharePrecise" },
    ]),
  });
}

/** How surely fitted values would be known. */
export function sensorCalibrationTable({ certainty }: MonitoringPlan): DisplayItem {
  const rows = certainty.calibration.flatMap(({ name, sensors, withAll, without }) => [
    { name, sensors, half: withAll },
    ...without.map((one) => ({ name: "", sensors: one.name, half: one.half })),
  ]);
  return table(rows, [
    { head: "fitted", value: ({ name }) => name },
    { head: "from", value: ({ sensors }) => sensors },
    { head: "half of 95 % band", value: ({ half }) => finite(half), kind: "sharePrecise" },
  ], "What the sensors add to a calibration");
}

/** Pressure and flow with tubes shut, and which states a day's readings would tell. */
export function blockedTable({ blocked }: MonitoringPlan): DisplayItem {
  return table(blocked.states, [
    { head: "state", value: ({ name }) => name },
    { head: "air flow", value: ({ airFlow }) => airFlow, kind: "airFlow" },
    { head: "header pressure", value: ({ pressure }) => pressure, kind: "pressure" },
    { head: "resistance over clean", value: ({ resistance }) => resistance, digits: 3 },
    { head: "told by a day", value: (row) => row.found ? "yes" : row.resistance > 1 ? "no" : "–" },
  ], `Shut and wet tubes: limit ${showNumber(blocked.limit, 3)} times the clean resistance`);
}

/** Resistance by number of shut tubes, and the limit. */
export function blockedChart({ blocked }: MonitoringPlan): DisplayItem {
  const rows = blocked.states.filter(({ shut }, k) => shut > 0 || k === 0);
  const few = blocked.fewest === null
    ? "none of the states"
    : `${blocked.fewest} shut tubes or more`;
  return figure({
    height: 280,
    x: { label: "tubes shut" },
    y: { label: "resistance over that of the clean field, –", grid: true },
    marks: [
      Plot.lineY(rows, { x: "shut", y: "resistance", stroke: PALETTE.air, strokeWidth: 2 }),
      Plot.dot(rows, {
        x: "shut",
        y: "resistance",
        fill: ({ found }: BlockedState) => found ? PALETTE.warm : PALETTE.air,
        r: 4,
      }),
      Plot.ruleY([blocked.limit], { stroke: PALETTE.ink, strokeDasharray: "4 3" }),
    ],
    color: { type: "identity" },
  }, {
    title: "When do pressure and flow tell shut tubes?",
    alt: `Resistance of the field rises with shut tubes; a day's readings tell ${few}.`,
    note:
      "The limit is three standard uncertainties of a day against the days after commissioning.",
    legend: [
      { label: "not told", colour: PALETTE.air },
      { label: "told", colour: PALETTE.warm },
      { label: "limit", colour: PALETTE.ink, sign: "dash" },
    ],
    table: dataTable(rows, [
      { head: "tubes shut", value: ({ shut }) => shut, digits: 0 },
      { head: "resistance over clean", value: ({ resistance }) => resistance, digits: 3 },
      { head: "air flow", value: ({ airFlow }) => airFlow, kind: "airFlow" },
      { head: "header pressure", value: ({ pressure }) => pressure, kind: "pressure" },
    ]),
  });
}

/** Speed of every tube with the limits within which it is accepted. */
export function commissioningChart({ commissioning }: MonitoringPlan): DisplayItem {
  const rows = commissioning.tubes;
  return figure({
    height: 280,
    x: { label: "tube, numbered from the fan side, layer by layer" },
    y: { label: "air speed, m/s", zero: true, grid: true },
    marks: [
      Plot.rectY(rows, {
        x1: (row: CommissioningRow) => row.tube - 0.4,
        x2: (row: CommissioningRow) => row.tube + 0.4,
        y1: "least",
        y2: "most",
        fill: GREY,
      }),
      Plot.dot(rows, { x: "tube", y: "speed", fill: PALETTE.air, r: 3 }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "Air speed of every tube before backfill",
    alt: `Planned speed of ${rows.length} tubes and the limits, ${
      shown(commissioning.reading, "share")
    } of reading error among them.`,
    note: "Scale the speeds of the day so that their mean is the plan's, then judge each.",
    legend: [
      { label: "planned", colour: PALETTE.air },
      { label: "accepted", colour: GREY },
    ],
    table: dataTable(rows, [
      { head: "tube", value: ({ tube }) => tube, digits: 0 },
      { head: "header pair", value: ({ group }) => group, digits: 0 },
      { head: "depth", value: ({ depth }) => depth, kind: "depth" },
      { head: "planned", value: ({ speed }) => speed, kind: "speed" },
      { head: "least", value: ({ least }) => least, kind: "speed" },
      { head: "most", value: ({ most }) => most, kind: "speed" },
    ]),
  });
}

/** Tests before and after backfill, what passes, and the caution beside each. */
export function commissioningSteps({ commissioning }: MonitoringPlan): DisplayItem {
  const { testPressure, mostLeak, steps } = commissioning;
  return table(
    steps,
    [
      { head: "step", value: ({ step }) => step },
      { head: "passes", value: ({ accept }) => accept },
      { head: "caution", value: ({ caution }) => caution },
    ],
    `Commissioning: leak test at ${shownBoth(testPressure, "pressure")}, at most ${
      shownBoth(mostLeak, "tubeFlow")
    }`,
  );
}

/** What fan, frost and water do in each month. */
export function calendarMonthsTable({ calendar }: MonitoringPlan): DisplayItem {
  return table(calendar, [
    { head: "month", value: ({ name }) => name },
    { head: "charging", value: ({ chargeHours }) => chargeHours, kind: "hours" },
    { head: "discharging", value: ({ dischargeHours }) => dischargeHours, kind: "hours" },
    { head: "water left in the tubes", value: ({ condensate }) => condensate, kind: "mass" },
    { head: "coldest outdoors", value: ({ coldest }) => coldest, kind: "temperature" },
    { head: "air at 95 % or more", value: ({ dampHours }) => dampHours, kind: "hours" },
  ], "The year of the fan");
}

/** Tasks month by month, why, and whom to defer to. */
export function calendarTable({ calendar }: MonitoringPlan): DisplayItem {
  const rows = calendar.flatMap(({ name, tasks }) =>
    tasks.map((task, k) => ({ ...task, month: k === 0 ? name : "" }))
  );
  return table(rows, [
    { head: "month", value: ({ month }) => month },
    { head: "what", value: ({ task }) => task },
    { head: "why", value: ({ why }) => why },
    { head: "defer to", value: ({ deferTo }) => deferTo },
  ], "Operation and maintenance; local codes and licensed people decide");
}
