/** The monitoring plan of a study, before the first sensor. @module */
import { type ResultTable, resultTable } from "../../basics/mod.ts";
import { fanAirPath, type FanInputs, type FanResult, type FanSurroundings } from "../../fan/mod.ts";
import type { HeadersQuestion, SummarisedHeaders } from "../../headers/mod.ts";
import { type BlockedLimits, blockedLimits } from "./blocked.ts";
import { type CalendarMonth, type CalendarRequest, maintenanceCalendar } from "./calendar.ts";
import { type CertaintyRequest, type PlanCertainty, planCertainty } from "./certainty.ts";
import { type Commissioning, commissioning } from "./commissioning.ts";
import { type SensorPlan, sensorPlan, type SensorPlanRequest } from "./sensor_plan.ts";

/** What the plan hangs on. */
export interface MonitoringRequest {
  /** places and prices of the sensors */
  readonly places: SensorPlanRequest;
  /** m of the house across the tubes */
  readonly houseAcross: number;
  /** headers, tubes and air */
  readonly headers: HeadersQuestion;
  /** result of the headers chapter */
  readonly shared: SummarisedHeaders;
  /** fan section of the study, and what the fan needs from elsewhere */
  readonly fan: { readonly inputs: FanInputs; readonly surroundings: FanSurroundings };
  /** curve of all fans together */
  readonly curve: FanResult["curve"];
  /** the study's year, for the bands */
  readonly certainty: CertaintyRequest;
  /** true for tubes with holes */
  readonly perforated: CalendarRequest["perforated"];
}

/** Where the sensors' places are measured from, m. */
export interface MonitoredField {
  /** m of a tube, its middle at 0 along */
  readonly length: number;
  /** m, tube centres across the field and below the floor */
  readonly positions: SensorPlanRequest["tubes"]["positions"];
  /** m of the house along the tubes */
  readonly houseAlong: number;
  /** m of the house across the tubes */
  readonly houseAcross: number;
}

/** The monitoring plan. */
export interface MonitoringPlan {
  /** the field that the places are in */
  readonly field: MonitoredField;
  /** which sensors, where, what they cost */
  readonly sensors: SensorPlan;
  /** what each adds in certainty */
  readonly certainty: PlanCertainty;
  /** blocked and flooded tubes by pressure */
  readonly blocked: BlockedLimits;
  /** speeds, leak and smoke test before backfill */
  readonly commissioning: Commissioning;
  /** operation and maintenance by month */
  readonly calendar: readonly CalendarMonth[];
}

/**
 * The monitoring plan of a study.
 *
 * @param request what it hangs on
 */
export function monitoringPlan(request: MonitoringRequest): MonitoringPlan {
  const { places, headers, shared, fan, curve, certainty, perforated } = request;
  const path = fanAirPath(fan.inputs, fan.surroundings);
  const { year, outside } = certainty;
  return {
    field: {
      length: places.tubes.length,
      positions: places.tubes.positions,
      houseAlong: places.houseAlong,
      houseAcross: request.houseAcross,
    },
    sensors: sensorPlan(places),
    certainty: planCertainty(certainty),
    blocked: blockedLimits({ headers, path, curve }),
    commissioning: commissioning(headers, shared),
    calendar: maintenanceCalendar({ year, outside, perforated }),
  };
}

/** Tables of the plan for the files of a run; the sensor list is the log reader's map. */
export function monitoringTables(plan: MonitoringPlan): readonly ResultTable[] {
  const { sensors, certainty, blocked, commissioning, calendar } = plan;
  return [
    { name: "measured-sensor-list", heads: sensors.table.heads, rows: sensors.table.rows },
    resultTable("measured-certainty", certainty.heat, [
      ["sensors", "", (row) => row.name],
      ["heat in, half of 95 % band", "1", (row) => finite(row.heatIn)],
      ["heat out, half of 95 % band", "1", (row) => finite(row.heatOut)],
      ["COP, half of 95 % band", "1", (row) => finite(row.cop)],
    ]),
    resultTable("measured-blocked", blocked.states, [
      ["state", "", (row) => row.name],
      ["air flow", "m³/s", (row) => row.airFlow],
      ["header pressure", "Pa", (row) => row.pressure],
      ["resistance over the clean field", "1", (row) => row.resistance],
      ["over the limit", "", (row) => row.found],
    ]),
    resultTable("measured-commissioning", commissioning.tubes, [
      ["tube", "", (row) => row.tube],
      ["group", "", (row) => row.group],
      ["depth", "m", (row) => row.depth],
      ["speed", "m/s", (row) => row.speed],
      ["least", "m/s", (row) => row.least],
      ["most", "m/s", (row) => row.most],
    ]),
    resultTable(
      "measured-calendar",
      calendar.flatMap((month) => month.tasks.map((task) => ({ ...task, month: month.name }))),
      [
        ["month", "", (row) => row.month],
        ["task", "", (row) => row.task],
        ["why", "", (row) => row.why],
        ["defer to", "", (row) => row.deferTo],
      ],
    ),
  ];
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
