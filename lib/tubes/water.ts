/** Tubes that hold water or silt. @module */
import type { AirProperties } from "../air/mod.ts";
import { exchangedFlow } from "./exchanged_flow.ts";
import { type Filling, fouledTube, standingWater } from "./fouling.ts";
import type { TubesResult } from "./types.ts";

/** One way a tube can fail. */
export interface FouledRow {
  /** what lies in the tube */
  readonly name: string;
  /** the filling, m */
  readonly filling: Filling;
  /** flow of this tube over that of a clean one, 0 to 1, pressure between the headers unchanged */
  readonly flow: number;
  /** heat of this tube over that of a clean one, 0 to 1, wall at one temperature */
  readonly heat: number;
  /** litres of water; null for silt */
  readonly litres: number | null;
}

/** m of tube that silts up or sags (common practice, no source) */
const SPAN = 3;

/**
 * One bad tube among good ones: silt of a quarter, half and three quarters of the tube's height over
 * 3 m, and sags of a quarter, half, the whole and one and a half of it at the fall of the tubes.
 *
 * @param tubes result of the tubes chapter
 * @param given fall of the tubes, m/m, and the air in them
 */
export function fouledTubes(
  tubes: TubesResult,
  given: { readonly slope: number; readonly air: AirProperties },
): FouledRow[] {
  const { slope, air } = given;
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
    const water = standingWater({ depth: share * diameter, span, slope, diameter });
    const name = `sag of ${share * 100} % of the height over ${span} m`;
    return row(name, { depth: water.depth, length: water.length }, water.litres);
  });
  return [...silt, ...sags];
}
