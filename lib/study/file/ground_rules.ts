/** Faults between the store's mesh, what lies in its soil, and its collector. @module */
import { PITCH_RATIO } from "../../store/mod.ts";
import { ANNUAL_MESH } from "../../soil/ground.ts";
import type { KeyPath } from "./yaml_source.ts";
import type { ChapterInputs } from "./derive.ts";

type Ground = Pick<ChapterInputs, "store" | "tubes" | "house">;

/** What must not be, with the key to change. */
export interface GroundRule {
  readonly path: KeyPath;
  readonly broken: (study: Ground) => boolean;
  readonly message: string;
}

/** m of soil that the mesh keeps below the lowest tubes, and below or beside insulation. */
const BELOW_TUBES = 1;
const BELOW_BOARDS = 0.5;

/** m to which the undisturbed ground is computed. */
const DEEPEST_GROUND = ANNUAL_MESH.depth;

const given = (value: number | undefined): value is number => value !== undefined;

/** Rules of the mesh, the tubes and the insulation in it. */
export const GROUND_RULES: readonly GroundRule[] = [
  {
    path: ["store", "collector", "pitch"],
    broken: ({ store: { collector } }) => {
      const ratio = collector === undefined ? 10 : collector.pitch / collector.holeDiameter;
      return ratio < PITCH_RATIO[0] || ratio > PITCH_RATIO[1];
    },
    message: `"store.collector.pitch" must be ${PITCH_RATIO.join(" to ")} times ` +
      '"store.collector.holeDiameter"',
  },
  {
    path: ["store", "meshDepth"],
    broken: ({ store, tubes }) => store.meshDepth <= lowestLayer(tubes) + BELOW_TUBES,
    message: '"store.meshDepth" must reach at least 1 m below the lowest layer of tubes',
  },
  {
    path: ["tubes", "depth"],
    broken: ({ tubes }) => (tubes.depth + lowestLayer(tubes)) / 2 > DEEPEST_GROUND,
    message:
      `The middle of the layers of tubes ("tubes.depth") lies deeper than ${DEEPEST_GROUND} m, to ` +
      "which the undisturbed ground is computed: lay them higher",
  },
  {
    path: ["store", "meshDepth"],
    broken: ({ store, house }) =>
      house.edgeInsulation > 0 &&
      store.meshDepth < house.edgeInsulationDepth + BELOW_BOARDS,
    message: '"store.meshDepth" must reach at least 0.5 m below "house.edgeInsulationDepth"',
  },
  {
    path: ["store", "outsideSoil"],
    broken: ({ store, house }) =>
      house.edgeInsulation > 0 && house.edgeInsulationWing > 0 &&
      store.outsideSoil < house.edgeInsulationWing + BELOW_BOARDS,
    message: '"store.outsideSoil" must reach at least 0.5 m beyond "house.edgeInsulationWing"',
  },
  {
    path: ["store", "flatBoardResistance"],
    broken: ({ store }) => (store.flatBoardResistance ?? 0) > 0 && !given(store.flatBoardDepth),
    message:
      '"store.flatBoardResistance" is given without "store.flatBoardDepth": say how deep the ' +
      "board lies, or leave it out",
  },
  {
    path: ["store", "flatBoardDepth"],
    broken: ({ store }) => given(store.flatBoardDepth) && !given(store.flatBoardResistance),
    message:
      '"store.flatBoardDepth" is given without "store.flatBoardResistance": say how much the ' +
      "board resists, or leave it out",
  },
  {
    path: ["store", "flatBoardDepth"],
    broken: ({ store }) =>
      (store.flatBoardResistance ?? 0) > 0 && given(store.flatBoardDepth) &&
      store.meshDepth < store.flatBoardDepth + BELOW_BOARDS,
    message: '"store.meshDepth" must reach at least 0.5 m below "store.flatBoardDepth"',
  },
];

function lowestLayer(tubes: Ground["tubes"]): number {
  return tubes.depth + (tubes.layers - 1) * tubes.layerSpacing;
}
