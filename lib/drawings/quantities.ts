/**
 * Quantity take-off from the geometry.
 *
 * @module
 */
import { mean, rollup, sum } from "d3-array";
import Papa from "papaparse";
import { headerLength, holeDiameter } from "../headers/mod.ts";
import { allowance, pitVolume } from "../tubes/mod.ts";
import { type DrawingInputs, fieldGeometry } from "./field.ts";

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
  const hole = holeDiameter(tubes.product);
  const pairs = field.headers.length;
  const length = sum(field.headers, headerLength);
  const middle = mean(field.layers)!;
  const ports = pairs * (headersInputs.layout === "two-ended" ? 2 : 1);
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
      amount: length,
      unit: "m",
      order: withWaste(length, "header waste"),
      basis: `${pairs} × first to last hole plus ${field.headers[0]!.end.toFixed(3)} m at each end`,
    },
    {
      item: "return header pipe",
      amount: length,
      unit: "m",
      order: withWaste(length, "header waste"),
      basis: "same as the supply header",
    },
    {
      item: "holes in headers",
      amount: ends,
      unit: "pieces",
      order: ends,
      basis: `diameter ${hole.toFixed(3)} m, one at each tube end`,
    },
    {
      item: "tube-to-header connectors",
      amount: ends,
      unit: "pieces",
      order: whole(ends),
      basis: "one at each tube end",
    },
    ...bendRows(inputs),
    {
      item: "header end caps",
      amount: 4 * pairs,
      unit: "pieces",
      order: 4 * pairs,
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

/** Bends of tubes that do not run straight into their header, by angle. */
function bendRows(inputs: DrawingInputs): MaterialQuantity[] {
  const { positions } = inputs.tubes;
  const bends = fieldGeometry(inputs).headers.flatMap(({ members, rows }) =>
    rows.filter(({ bend }) => bend > 0).map(({ bend, depth }) => ({
      angle: bend.toFixed(0),
      tubes: members.filter((tube) => positions[tube]!.depth === depth).length,
    }))
  );
  return [...rollup(bends, (rows) => 2 * sum(rows, ({ tubes }) => tubes), ({ angle }) => angle)]
    .map(([angle, count]) => ({
      item: `tube bends, ${angle}°`,
      amount: count,
      unit: "pieces",
      order: whole(count),
      basis: "one at each end of a tube that does not lie level with its header",
    }));
}

function earthRows(inputs: DrawingInputs): MaterialQuantity[] {
  const { pit, radius, headers: pairs } = fieldGeometry(inputs);
  const { tubes, headersInputs } = inputs;
  const headers = sum(pairs, headerLength) * Math.PI / 4 *
    (headersInputs.diameter ** 2 + headersInputs.returnDiameter ** 2);
  const bank = pitVolume(pit);
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
      } m (mean depth) ${
        pit.batter === 0
          ? "with vertical sides; sloped or shored sides need more"
          : `at the bottom, with a batter of ${pit.batter}`
      }; "to order" is the loose volume`,
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
