/**
 * Quantity take-off from the geometry.
 *
 * @module
 */
import { mean } from "d3-array";
import Papa from "papaparse";
import { type DrawingInputs, fieldGeometry } from "./field.ts";
import { headerHoles } from "./holes.ts";
import { allowance } from "./notes.ts";

/** One row of the take-off. */
export interface MaterialQuantity {
  /** what is bought */
  readonly item: string;
  /** net amount from the drawing */
  readonly amount: number;
  /** unit of the value */
  readonly unit: string;
  /** amount to order, with waste */
  readonly order: number;
  /** how it was worked out */
  readonly basis: string;
}

/** Quantities of the tube field, its headers, the pit and the edge insulation. */
export function quantityTakeOff(inputs: DrawingInputs): MaterialQuantity[] {
  return [...pipeRows(inputs), ...earthRows(inputs), ...boardRows(inputs)];
}

function withWaste(amount: number, waste: string): number {
  return amount * (1 + allowance(waste));
}

function whole(amount: number): number {
  return Math.ceil(amount * (1 + allowance("spare fittings")));
}

function pipeRows(inputs: DrawingInputs): MaterialQuantity[] {
  const { tubes, headersInputs, house, riserDiameter } = inputs;
  const field = fieldGeometry(inputs);
  const holes = headerHoles(inputs);
  const headerLength = headersInputs.groups * (holes.run + 2 * holes.holes[0]!.diameter);
  const middle = mean(field.layers)!;
  const ports = headersInputs.groups * (headersInputs.layout === "two-ended" ? 2 : 1);
  const supplyRisers = Math.max(ports, inputs.fans);
  const risers = supplyRisers * (house.ridgeHeight - 0.4 + middle) + ports * (0.4 + middle);
  const ends = 2 * tubes.count;
  const mesh = allowance("mesh overlap") * (supplyRisers + ports) * Math.PI * riserDiameter ** 2 /
    4;
  return [
    {
      item: `tube, ${tubes.product.name}`,
      amount: tubes.totalLength,
      unit: "m",
      order: withWaste(tubes.totalLength, "tube waste"),
      basis: `${tubes.count} × ${tubes.length.toFixed(2)} m`,
    },
    {
      item: "supply header pipe",
      amount: headerLength,
      unit: "m",
      order: withWaste(headerLength, "header waste"),
      basis: `${headersInputs.groups} × first to last hole plus one hole width at each end`,
    },
    {
      item: "return header pipe",
      amount: headerLength,
      unit: "m",
      order: withWaste(headerLength, "header waste"),
      basis: "same as the supply header",
    },
    {
      item: "holes in headers",
      amount: ends,
      unit: "pieces",
      order: ends,
      basis: `diameter ${holes.holes[0]!.diameter.toFixed(3)} m, one at each tube end`,
    },
    {
      item: "tube-to-header connectors",
      amount: ends,
      unit: "pieces",
      order: whole(ends),
      basis: "one at each tube end",
    },
    {
      item: "header end caps",
      amount: 4 * headersInputs.groups,
      unit: "pieces",
      order: 4 * headersInputs.groups,
      basis: "two on each header; leave one as a clean-out",
    },
    {
      item: "riser pipe",
      amount: risers,
      unit: "m",
      order: withWaste(risers, "header waste"),
      basis: `${supplyRisers} × intake 0.4 m below the ridge, ${ports} × outlet 0.4 m above the ` +
        "floor, down to the middle of the headers",
    },
    {
      item: "riser-to-header tees or sweeps",
      amount: supplyRisers + ports,
      unit: "pieces",
      order: supplyRisers + ports,
      basis: "one for each riser",
    },
    {
      item: "rodent mesh",
      amount: mesh / allowance("mesh overlap"),
      unit: "m²",
      order: mesh,
      basis: "over every intake and outlet",
    },
  ];
}

function earthRows(inputs: DrawingInputs): MaterialQuantity[] {
  const { pit, radius } = fieldGeometry(inputs);
  const { tubes, headersInputs } = inputs;
  const { run, holes } = headerHoles(inputs);
  const headers = headersInputs.groups * (run + 2 * holes[0]!.diameter) * Math.PI / 4 *
    (headersInputs.diameter ** 2 + headersInputs.returnDiameter ** 2);
  const bank = pit.length * pit.width * pit.depth;
  const bedding = pit.length * pit.width * allowance("bedding");
  const displaced = tubes.totalLength * Math.PI * radius ** 2 + headers;
  return [
    {
      item: "excavation",
      amount: bank,
      unit: "m³ bank",
      order: bank * allowance("swell"),
      basis: `${pit.length.toFixed(2)} × ${pit.width.toFixed(2)} × ${
        pit.depth.toFixed(2)
      } m (mean depth) with vertical sides; sloped or shored sides need more; "to order" is the loose volume`,
    },
    {
      item: "bedding",
      amount: bedding,
      unit: "m³",
      order: bedding,
      basis: `${allowance("bedding")} m below the lowest tubes`,
    },
    {
      item: "backfill in lifts",
      amount: bank - bedding - displaced,
      unit: "m³",
      order: (bank - bedding - displaced) * allowance("swell"),
      basis: "pit less bedding, tubes and headers",
    },
  ];
}

function boardRows(inputs: DrawingInputs): MaterialQuantity[] {
  const { house } = inputs;
  if (house.edgeInsulation <= 0 || house.edgeInsulationDepth <= 0) return [];
  const board = 2 * (house.length + house.width) * house.edgeInsulationDepth;
  return [{
    item: `edge insulation, ${house.edgeInsulation.toFixed(2)} m² K/W`,
    amount: board,
    unit: "m²",
    order: withWaste(board, "insulation waste"),
    basis: `${2 * (house.length + house.width)} m around the house × ${
      house.edgeInsulationDepth.toFixed(2)
    } m`,
  }];
}

/** The take-off as CSV. */
export function quantitiesCsv(rows: readonly MaterialQuantity[]): string {
  const table = rows.map((row) => ({
    item: row.item,
    "net amount": row.amount.toFixed(2),
    "to order": row.order.toFixed(2),
    unit: row.unit,
    basis: row.basis,
  }));
  return `${Papa.unparse(table, { newline: "\n" })}\n`;
}
