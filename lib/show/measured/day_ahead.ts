/** Tomorrow night: the coming days inside, the frost warning, the best hours to charge. @module */
import * as Plot from "@observablehq/plot";
import type { AheadHour, ChargingSpell, FrostWarning, Tomorrow } from "../../measured/mod.ts";
import { showNumber } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { GREY, PALETTE } from "../kit/palette.ts";
import { paragraph, table } from "../kit/table.ts";

const nothing = ({ reason }: Tomorrow) => paragraph(`No day ahead is worked out: ${reason}.`);

/** The coming days inside with and without fan and heater, and outdoors. */
export function aheadChart(tomorrow: Tomorrow): DisplayItem {
  const { ahead, hours } = tomorrow;
  if (ahead === null) return nothing(tomorrow);
  const date = ({ time }: AheadHour) => new Date(`${time.replace(" ", "T")}Z`);
  const line = (y: (hour: AheadHour) => number, stroke: string, dash?: string) =>
    Plot.lineY(hours, {
      x: date,
      y,
      stroke,
      strokeWidth: 1.8,
      ...(dash === undefined ? {} : { strokeDasharray: dash }),
    });
  const free = ahead.courses.find(({ fan, heater }) => fan && !heater)!;
  const frost = ahead.warnings.find((one) => one.limit === 0 && one.fan && !one.heater)!;
  return figure({
    height: 340,
    marginLeft: 45,
    x: { type: "utc", label: null, grid: true },
    y: { label: "hourly mean, degC", grid: true },
    marks: [
      Plot.areaY(hours, {
        x: date,
        y1: ({ low }: AheadHour) => low,
        y2: ({ high }: AheadHour) => high,
        fill: PALETTE.warm,
        fillOpacity: 0.2,
      }),
      Plot.ruleY([0], { stroke: PALETTE.ink, strokeWidth: 1 }),
      line(({ outdoors }) => outdoors, PALETTE.cold),
      line(({ withoutFan }) => withoutFan, PALETTE.latent, "5 3"),
      line(({ heated }) => heated, GREY, "2 3"),
      line(({ inside }) => inside, PALETTE.warm),
    ],
  }, {
    title: "The coming days inside",
    alt: `Without a heater and with the fan as it is set the coldest hour inside is ${
      shownBoth(free.coldestHour, "temperature")
    }; frost is ${
      frost.likely === null ? "not foreseen" : `foreseen from ${hours[frost.likely]!.time}`
    }.`,
    note:
      "Band: nine in ten of the misses by night on days that no fit has seen; what the forecast is " +
      "off by comes on top. Times on the house's standard time.",
    legend: [
      { label: "inside, fan as set", colour: PALETTE.warm, sign: "line" },
      { label: "fan off", colour: PALETTE.latent, sign: "dash" },
      { label: "fan and heater", colour: GREY, sign: "dash" },
      { label: "outdoors, by the forecast", colour: PALETTE.cold, sign: "line" },
    ],
    table: dataTable(hours, [
      { head: "hour", value: ({ time }) => time },
      { head: "outdoors", value: (row) => row.outdoors, kind: "temperature" },
      { head: "inside", value: (row) => row.inside, kind: "temperature" },
      { head: "low", value: (row) => row.low, kind: "temperature", us: false },
      { head: "high", value: (row) => row.high, kind: "temperature", us: false },
      { head: "fan off", value: (row) => row.withoutFan, kind: "temperature", us: false },
      { head: "fan and heater", value: (row) => row.heated, kind: "temperature", us: false },
      { head: "into the store, kW", value: (row) => row.stored, digits: 1 },
    ]),
  });
}

/** When the house falls below a limit: possibly, likely, nearly certainly. */
export function frostTable(tomorrow: Tomorrow): DisplayItem {
  const { ahead, hours } = tomorrow;
  if (ahead === null) return nothing(tomorrow);
  const when = (place: number | null) =>
    place === null ? "not within these days" : hours[place]!.time;
  const way = ({ fan, heater }: FrostWarning) =>
    `${fan ? "fan as set" : "fan off"}, ${heater ? "heater on" : "no heater"}`;
  return table(ahead.warnings, [
    { head: "below", value: ({ name }) => name },
    { head: "limit", value: ({ limit }) => limit, kind: "temperature" },
    { head: "way", value: way },
    { head: "possible from", value: ({ possible }) => when(possible), right: true },
    { head: "likely from", value: ({ likely }) => when(likely), right: true },
    { head: "nearly certain from", value: ({ nearlyCertain }) => when(nearlyCertain), right: true },
  ], "Frost warning");
}

/** Spells in which charging pays, the best first. */
export function chargingTable(tomorrow: Tomorrow): DisplayItem {
  const { ahead, hours } = tomorrow;
  if (ahead === null) return nothing(tomorrow);
  if (ahead.charging.length === 0) {
    return paragraph("The fan would not charge in these days: the house stays too cool for it.");
  }
  const end = ({ to }: ChargingSpell) => hours[to]?.time ?? "the end of the forecast";
  return table(ahead.charging, [
    { head: "from", value: ({ from }) => hours[from]!.time },
    { head: "to", value: end },
    { head: "heat stored", value: ({ heat }) => heat, kind: "energy" },
    { head: "fan", value: ({ fanEnergy }) => fanEnergy, kind: "electricity" },
    { head: "heat for each kilowatt-hour of the fan", value: ({ ratio }) => ratio, digits: 1 },
  ], "Best hours to charge, best first");
}

/** What the heater would have to give with and without the fan, and how far the model is from the log. */
export function aheadWords(tomorrow: Tomorrow): DisplayItem {
  const { ahead, remarks, pastHours, heaterPower } = tomorrow;
  if (ahead === null) return nothing(tomorrow);
  const of = (fan: boolean) => ahead.courses.find((one) => one.fan === fan && one.heater)!;
  const gap = ahead.storeGap === null
    ? "No probe between the tubes says how near the model is."
    : `Between the tubes the model is ${
      shownBoth(ahead.storeGap, "temperatureDifference")
    } off the probes (positive: model warmer); beyond a kelvin the lines are off by some of it.`;
  const heater = heaterPower > 0
    ? `The heater of ${shown(heaterPower, "power")}`
    : "A heater without limit, held at the set point,";
  return paragraph(
    [
      `${heater} would give ${shownBoth(of(true).heaterEnergy, "energy")} in these ${
        showNumber(ahead.hours, 0)
      } h with the fan as set, and ${
        shownBoth(of(false).heaterEnergy, "energy")
      } with the fan off.`,
      `The model ran through ${showNumber(pastHours, 0)} logged hours before.`,
      gap,
      ...remarks,
    ].join(" "),
  );
}
