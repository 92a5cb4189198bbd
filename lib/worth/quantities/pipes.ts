/** Quantities of tubes, headers and risers, from the geometry. @module */
import { mean, rollup, sum } from "d3-array";
import { fieldGeometry, headerLength, holeDiameter } from "../../headers/mod.ts";
import { showBoth, showNumber } from "../../units/mod.ts";
import { allowance } from "../../tubes/mod.ts";
import { coilCuts } from "./coils.ts";
import type { MaterialQuantity, TakeOffInputs } from "./types.ts";
import { whole, withWaste } from "./waste.ts";

const PART = "tubes and headers";
/** m from the ridge to an intake and from the floor to an outlet; common practice, no source */
const RISER_END = 0.4;

/** Tubes, headers, risers and what joins them. */
export function pipeRows(inputs: TakeOffInputs): MaterialQuantity[] {
  const { tubes, headersInputs, house, riserDiameter } = inputs;
  const field = fieldGeometry(inputs);
  const hole = holeDiameter(tubes.product);
  const pairs = field.headers.length;
  const length = sum(field.headers, headerLength);
  const middle = mean(field.layers)!;
  const ports = pairs * (headersInputs.layout === "two-ended" ? 2 : 1);
  const supplyRisers = Math.max(ports, inputs.fans);
  const risers = supplyRisers * (house.ridgeHeight - RISER_END + middle) +
    ports * (RISER_END + middle);
  const end = showBoth(RISER_END, "smallLength");
  const ends = 2 * tubes.count;
  const mesh = allowance("mesh overlap") * (supplyRisers + ports) * Math.PI * riserDiameter ** 2 /
    4;
  return [
    tubeRow(inputs),
    {
      id: "header-pipe",
      part: PART,
      item: "supply header pipe",
      amount: length,
      unit: "m",
      order: withWaste(length, "header waste"),
      basis: `${pairs} × first to last hole plus ${
        showBoth(field.headers[0]!.end, "smallLength")
      } at each end`,
    },
    {
      id: "header-pipe",
      part: PART,
      item: "return header pipe",
      amount: length,
      unit: "m",
      order: withWaste(length, "header waste"),
      basis: "same as the supply header",
    },
    {
      id: "header-hole",
      part: PART,
      item: "holes in headers",
      amount: ends,
      unit: "pieces",
      order: ends,
      basis: `diameter ${showBoth(hole, "smallLength")}, one at each tube end`,
    },
    {
      id: "tube-connector",
      part: PART,
      item: "tube-to-header connectors",
      amount: ends,
      unit: "pieces",
      order: whole(ends),
      basis: "one at each tube end",
    },
    ...bendRows(inputs),
    {
      id: "header-cap",
      part: PART,
      item: "header end caps",
      amount: 4 * pairs,
      unit: "pieces",
      order: 4 * pairs,
      basis: "two on each header; leave one as a clean-out",
    },
    {
      id: "riser-pipe",
      part: PART,
      item: "riser pipe",
      amount: risers,
      unit: "m",
      order: withWaste(risers, "header waste"),
      basis: `${supplyRisers} × intake ${end} below the ridge, ` +
        `${ports} × outlet ${end} above the floor, down to the middle of the headers`,
    },
    {
      id: "riser-tee",
      part: PART,
      item: "riser-to-header tees or sweeps",
      amount: supplyRisers + ports,
      unit: "pieces",
      order: supplyRisers + ports,
      basis: "one for each riser",
    },
    {
      id: "rodent-mesh",
      part: PART,
      item: "rodent mesh",
      amount: mesh / allowance("mesh overlap"),
      unit: "m²",
      order: mesh,
      basis: "over every intake and outlet",
    },
  ];
}

/** Bends of tubes that do not run straight into their header, by angle. */
function bendRows(inputs: TakeOffInputs): MaterialQuantity[] {
  const { positions } = inputs.tubes;
  const bends = fieldGeometry(inputs).headers.flatMap(({ members, rows }) =>
    rows.filter(({ bend }) => bend > 0).map(({ bend, depth }) => ({
      angle: showNumber(bend, 0),
      tubes: members.filter((tube) => positions[tube]!.depth === depth).length,
    }))
  );
  return [...rollup(bends, (rows) => 2 * sum(rows, ({ tubes }) => tubes), ({ angle }) => angle)]
    .map(([angle, count]) => ({
      id: "tube-bend",
      part: PART,
      item: `tube bends, ${angle}°`,
      amount: count,
      unit: "pieces",
      order: whole(count),
      basis: "one at each end of a tube that does not lie level with its header",
    }));
}

/** The tubes: by the metre with waste, or in whole coils. */
function tubeRow({ tubes, coilLength }: TakeOffInputs): MaterialQuantity {
  const { product, count, length, totalLength } = tubes;
  const row = {
    id: `tube:${product.id}`,
    part: PART,
    item: `tube, ${product.name}`,
    amount: totalLength,
    unit: "m",
  } as const;
  const laid = `${count} × ${showBoth(length, "depth")}`;
  if (coilLength === null) {
    return { ...row, order: withWaste(totalLength, "tube waste"), basis: laid };
  }
  const cuts = coilCuts(count, length, coilLength);
  return {
    ...row,
    order: cuts.coils * coilLength,
    basis: `${laid}: ${cuts.coils} ${cuts.coils === 1 ? "coil" : "coils"} of ${
      showBoth(coilLength, "length")
    }, ${cuts.words}`,
  };
}
