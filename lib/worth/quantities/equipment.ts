/** Quantities of fans, control, drainage and papers. @module */
import { fieldGeometry } from "../../headers/mod.ts";
import type { MaterialQuantity, TakeOffInputs, WorkPart } from "./types.ts";

type Piece = readonly [id: string, part: WorkPart, item: string, count: number, basis: string];

/** What is bought by the piece besides pipes and boards. */
export function equipmentRows(inputs: TakeOffInputs): MaterialQuantity[] {
  const { fans, fan } = inputs;
  const headers = fieldGeometry(inputs).headers.length;
  const pieces: readonly Piece[] = [
    [`fan:${fan.id}`, "air and control", `fan, ${fan.name}`, fans, "fans of the study"],
    ["fan-guard", "air and control", "guard for both sides of a fan", fans, "one set a fan"],
    ["isolator", "air and control", "lockable isolator beside the fan", fans, "one a fan"],
    ["flap", "air and control", "back-draught flap", fans, "one a fan"],
    [
      "thermostat",
      "air and control",
      "differential thermostat with two modes and its sensors",
      1,
      "charging and discharging",
    ],
    ["electrician", "air and control", "mains and control wiring", 1, "a licensed electrician"],
    [
      "drain",
      "water and alarm",
      "condensate drain from a low header",
      headers,
      "one at each low header, with a trap or to a sump",
    ],
    [
      "sump",
      "water and alarm",
      "sump with a lid",
      1,
      "where all drains end; also shows groundwater",
    ],
    ["frost-alarm", "water and alarm", "frost alarm with a supply of its own", 1, "one a house"],
    ["permit", "papers", "permits and marking of buried services", 1, "ask before digging"],
  ];
  return pieces.map(([id, part, item, count, basis]) => ({
    id,
    part,
    item,
    amount: count,
    unit: "pieces",
    order: count,
    basis,
  }));
}
