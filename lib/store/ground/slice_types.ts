/** What a slice of soil is made of, and the conduction worked out of it. @module */
import type { CellFreezing, SoilFreezing } from "./cell_freezing.ts";
import type { EndWalls } from "./end_walls.ts";

/** A tube's coupling to the cells along its wall, or that of several tubes alike. */
export interface TubePort {
  readonly cells: Int32Array;
  /** share of the tube's heat each cell takes; sums to 1 */
  readonly weights: Float64Array;
  /** m K/W between the tube's wall and the mean of those cells; negative where they are coarse */
  readonly resistance: number;
  /** number of tubes; 0.5 where the mirror plane cuts one */
  readonly part: number;
}

/** A surface that joins cells to one temperature outside the soil. */
export interface SurfacePort {
  readonly cells: Int32Array;
  /** W/(m K): per metre of slice, one for each cell */
  readonly conductances: Float64Array;
  /** share of the resistance that lies in the soil, not in the film before it; absent: all of it */
  readonly inSoil?: number | undefined;
}

/**
 * One metre of slice: M dT/dt = −K T + sources, cells row by row. Plain data; knows nothing of
 * fans, houses or hours. All values are for the cells kept, so for half a slice where the mesh is
 * halved.
 */
export interface ConductionOperator {
  readonly columns: number;
  readonly rows: number;
  /** J/(m K) */
  readonly capacity: Float64Array;
  /** W/(m K) from a cell to its right and lower neighbour; 0 at the end */
  readonly sideways: Float64Array;
  readonly downwards: Float64Array;
  readonly tubes: readonly TubePort[];
  readonly floor: SurfacePort;
  readonly outdoor: SurfacePort;
  readonly deep: SurfacePort;
  /** cells between the tubes and their shares: the place of the store's thermometer */
  readonly store: { readonly cells: Int32Array; readonly weights: Float64Array };
  /** water in the cells that can freeze; null where there is none */
  readonly freezing: CellFreezing | null;
}

/** A zone of other soil in the slice, such as a gravel bed; later zones win. */
export interface SoilZone {
  /** m; across from the middle of the house (absolute value) and below the surface */
  readonly within: number;
  readonly from: number;
  readonly to: number;
  readonly conductivity: number;
  readonly heatCapacity: number;
  /** its water; absent where nothing in it freezes */
  readonly freezing?: SoilFreezing | undefined;
}

/** A board of insulation in the soil. */
export interface SoilBoard {
  /** upright at the edge of the floor, flat below the floor, or flat from the edge outward */
  readonly kind: "edge" | "flat" | "wing";
  /** m: foot of the upright board, or depth of a flat one */
  readonly depth: number;
  /** m from the edge outward, of a wing */
  readonly width?: number | undefined;
  /** m² K/W */
  readonly resistance: number;
}

/** What makes soil and surfaces of a slice. */
export interface SliceSoil {
  /** W/(m K) */
  readonly conductivity: number;
  /** J/(m³ K) */
  readonly heatCapacity: number;
  /** its water; absent where nothing in it freezes */
  readonly freezing?: SoilFreezing | undefined;
  readonly zones: readonly SoilZone[];
  readonly boards: readonly SoilBoard[];
  /** W/(m² K) between floor surface and its driving temperature; 0 lets no heat through */
  readonly floorFilm: number;
  /** W/(m² K) at the surface outside; Infinity holds the surface at the outdoor temperature */
  readonly outdoorFilm: number;
  /** what the soil under the floor loses beyond the end walls; absent: nothing */
  readonly ends?: EndWalls | undefined;
  /** true holds the lower end of the mesh at the deep temperature, as moving groundwater does */
  readonly deepHeld: boolean;
  /** outside radius of the tubes, m */
  readonly tubeRadius: number;
}
