/** The water of each cell that can freeze. @module */

/** What freezing does to a soil. */
export interface SoilFreezing {
  /** J/m³ set free when all its water freezes */
  readonly latentHeat: number;
  /** K below 0 degC over which the water freezes, evenly */
  readonly freezingRange: number;
  /** J/(m³ K), all water ice */
  readonly frozenHeatCapacity: number;
  /** W/(m K), all water ice; absent: as unfrozen */
  readonly frozenConductivity?: number | undefined;
}

/** The same by cell of one metre of slice. */
export interface CellFreezing {
  /** J/m set free when all the water of a cell freezes; 0 where there is none */
  readonly latent: Float64Array;
  /** K */
  readonly range: Float64Array;
  /** J/(m K), all water ice */
  readonly frozenCapacity: Float64Array;
  /** ratio of frozen to unfrozen conductivity */
  readonly ratio: Float64Array;
}

/** K taken where nothing freezes, so that no range is 0. */
const ANY_RANGE = 1;

/**
 * Water by cell; null where none freezes. Cells that hold less soil than their size, as in the
 * block of a tube, hold less water in proportion.
 *
 * @param soils soil of each cell
 * @param capacity J/(m K) of each cell, unfrozen
 */
export function cellFreezing(
  soils: readonly {
    readonly conductivity: number;
    readonly heatCapacity: number;
    readonly freezing?: SoilFreezing | undefined;
  }[],
  capacity: Float64Array,
): CellFreezing | null {
  const latent = capacity.map((heat, c) =>
    heat / soils[c]!.heatCapacity * (soils[c]!.freezing?.latentHeat ?? 0)
  );
  if (latent.every((heat) => heat === 0)) return null;
  return {
    latent,
    range: capacity.map((_, c) => soils[c]!.freezing?.freezingRange ?? ANY_RANGE),
    frozenCapacity: capacity.map((heat, c) => {
      const { heatCapacity, freezing } = soils[c]!;
      return heat * (freezing?.frozenHeatCapacity ?? heatCapacity) / heatCapacity;
    }),
    ratio: capacity.map((_, c) => conductionRatio(soils[c]!)),
  };
}

/** Frozen over unfrozen conductivity of a soil; 1 where it holds no water. */
function conductionRatio(soil: {
  readonly conductivity: number;
  readonly freezing?: SoilFreezing | undefined;
}): number {
  const { conductivity, freezing } = soil;
  if (freezing === undefined || freezing.latentHeat === 0) return 1;
  return (freezing.frozenConductivity ?? conductivity) / conductivity;
}
