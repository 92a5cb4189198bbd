/** Tubes that hold water or silt, and the water the air leaves behind. @module */
import { airProperties } from "../../air/mod.ts";
import { exchangedFlow } from "../../headers/mod.ts";
import { DESIGN_AIR_TEMPERATURE, meanPressure, type Study } from "../../study/mod.ts";
import { type Filling, fouledTube, standingWater, type TubesResult } from "../../tubes/mod.ts";

/** One way a tube can fail. */
export interface FouledRow {
  /** what lies in the tube */
  readonly name: string;
  /** the filling */
  readonly filling: Filling;
  /** ratio of the flow of this tube to that of a clean one, pressure between the headers unchanged */
  readonly flow: number;
  /** ratio of the heat of this tube to that of a clean one, wall at one temperature */
  readonly heat: number;
  /** litres of water; null for silt */
  readonly litres: number | null;
}

/** m of tube that silts up or sags (common practice, no source) */
const SPAN = 3;

/**
 * One bad tube among good ones: silt of a quarter, half and three quarters of the tube's height over
 * 3 m, and sags of a quarter, half and the whole of it at the study's slope.
 */
export function fouledTubes(study: Study, tubes: TubesResult): FouledRow[] {
  const air = airProperties(DESIGN_AIR_TEMPERATURE, meanPressure(study));
  const { diameter, length, product } = tubes;
  const span = Math.min(SPAN, length);
  const row = (name: string, filling: Filling, litres: number | null): FouledRow => {
    const { blocked, addedLoss, wallShare } = fouledTube(
      { product, length, air },
      filling,
      tubes.flowPerTube,
    );
    const flow = blocked
      ? 0
      : Math.sqrt(tubes.lossCoefficient / (tubes.lossCoefficient + addedLoss));
    const heat = exchangedFlow([flow * tubes.flowPerTube], { product, length, air }) /
      exchangedFlow([tubes.flowPerTube], { product, length, air });
    return { name, filling, flow, heat: heat * wallShare, litres };
  };
  const silt = [0.25, 0.5, 0.75].map((share) =>
    row(
      `silt, ${share * 100} % of the height over ${span} m`,
      { depth: share * diameter, length: span },
      null,
    )
  );
  const sags = [0.25, 0.5, 1, 1.5].map((share) => {
    const water = standingWater({
      depth: share * diameter,
      span,
      slope: study.tubes.slope,
      diameter,
    });
    const name = `sag of ${share * 100} % of the height over ${span} m`;
    return row(name, { depth: water.depth, length: water.length }, water.litres);
  });
  return [...silt, ...sags];
}

/** Least slope at which a sag of a tenth of the tube's height over 3 m still drains, m/m. */
export function slopeThatDrains(tubes: TubesResult): number {
  return 4 * 0.1 * tubes.diameter / Math.min(SPAN, tubes.length);
}
