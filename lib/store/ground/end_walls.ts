/** The walls that run with the slices: what the soil loses to the ground beyond them. @module */
import { sum } from "d3-array";
import { sectionHeat, sidewaysOf } from "../../house/mod.ts";
import type { HouseInputs } from "../../house/types.ts";
import { dampingDepth } from "../../soil/mod.ts";
import type { AnnualWave } from "../../soil/types.ts";

/** What each metre across a slice loses beyond the end walls, row by row, W/(m² K). */
export interface EndWalls {
  /** to the ground beyond, as warm as the surface outdoors */
  readonly surface: Float64Array;
  /** to the ground beyond, as warm as the deep ground */
  readonly deep: Float64Array;
}

/** What the end walls are worked out from. */
export interface EndWallsGiven {
  /** m of house along the tubes: from one end wall to the other */
  readonly along: number;
  /** m of wall base */
  readonly wall: number;
  /** W/(m² K) of the floor */
  readonly floorFilm: number;
  /** insulation around the floor */
  readonly edge: Pick<
    HouseInputs,
    "edgeInsulation" | "edgeInsulationDepth" | "edgeInsulationWing"
  >;
  /** W/(m K) */
  readonly conductivity: number;
  /** m of the mesh beside and below the floor */
  readonly outside: number;
  readonly wave: AnnualWave;
  /** m, heights of the mesh's rows from the surface down */
  readonly heights: Float64Array;
}

/**
 * Share of the surface's swing that the ground at a depth follows at once,
 * e^(−z/d)·cos(z/d), the part in phase of the annual wave; 0 where it would be negative.
 */
function inPhase(depths: number): number {
  return Math.max(0, Math.exp(-depths) * Math.cos(depths));
}

/**
 * Conductances from the soil under the floor to the ground beyond the two end walls. They come from
 * the steady plane section through an end wall, as the house chapter's floor takes its own: heat
 * that crosses the floor's edge at each depth over the mean temperature under the floor there. It
 * is spread evenly over the slices. The ground beyond has its undisturbed temperature at the same
 * depth, made up of surface and deep ground so that the yearly mean and what is in phase with the
 * surface are kept; the lag of the rest is not.
 */
export function endWalls(given: EndWallsGiven): EndWalls {
  const { along, edge, heights, wave } = given;
  const insulated = edge.edgeInsulation > 0;
  const section = sectionHeat({
    halfWidth: along / 2,
    wallWidth: given.wall,
    wallBase: "adiabatic",
    conductivity: given.conductivity,
    insideFilm: given.floorFilm,
    outsideFilm: Infinity,
    insulation: edge.edgeInsulation,
    insulationDepth: insulated ? edge.edgeInsulationDepth : 0,
    insulationWing: insulated ? edge.edgeInsulationWing : 0,
    outside: given.outside,
    depth: sum(heights),
    finest: 0.02,
    growth: 1.35,
  });
  const damping = dampingDepth(wave.diffusivity);
  const [surface, deep] = [new Float64Array(heights.length), new Float64Array(heights.length)];
  let top = 0;
  heights.forEach((height, row) => {
    const { heat, mean } = sidewaysOf(section, top, top + height);
    const share = inPhase((top + height / 2) / damping);
    surface[row] = share * 2 * heat / mean / along;
    deep[row] = (1 - share) * 2 * heat / mean / along;
    top += height;
  });
  return { surface, deep };
}
