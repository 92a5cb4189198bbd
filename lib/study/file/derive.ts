/** Defaults that follow from other inputs. @module */
import { FANS } from "../../fan/mod.ts";
import type { FanInputs } from "../../fan/types.ts";
import type { HeadersInputs } from "../../headers/types.ts";
import type { HouseInputs } from "../../house/types.ts";
import { findSoil } from "../../soil/mod.ts";
import type { SoilInputs, SoilLayerInputs } from "../../soil/types.ts";
import { findTube } from "../../tubes/mod.ts";
import type { TubesInputs } from "../../tubes/types.ts";
import { formatQuantity } from "../../units/mod.ts";
import { chooseFan } from "../../fan/default_fan.ts";
import { fieldKind, fieldRow } from "./fields.ts";
import type { LoadedFans } from "./own_fans.ts";
import type { SoilLayerGiven, StudyGiven } from "./schema.ts";
import type { DefaultTaken } from "../types.ts";

/** Inputs of the chapters with nothing left open. */
export interface ChapterInputs {
  readonly soil: SoilInputs;
  readonly house: HouseInputs;
  readonly tubes: TubesInputs;
  readonly headers: HeadersInputs;
  readonly fan: FanInputs;
}

/** Air changes an hour the tube field moves where no air flow is given. Growers' practice, no source. */
const AIR_CHANGES = 5;
/** m/s in the tube where no count is given. Common practice, no source. */
const TUBE_SPEED = 2.5;
/** m at each end of the house kept free for the headers. Common practice, no source. */
const END_CLEARANCE = 1;
/** m between tubes, where the layer then fits under the house. Common practice, no source. */
const TUBE_SPACING = 0.4;
/** m from the outer tubes to the side of the house where no spacing is given. Common practice, no source. */
const SIDE_CLEARANCE = 0.3;
/** m² of drum for each m³ of water: a 208 L drum, 0.57 m across and 0.85 m high, all round. */
const DRUM_SURFACE = (Math.PI * 0.57 * 0.85 + 0.5 * Math.PI * 0.57 ** 2) / 0.208;

type Note = <T extends number | string>(
  key: string,
  given: T | undefined,
  otherwise: () => T,
  shownKey?: string,
) => T;

/** Fills the open inputs and notes each value taken. */
export function deriveDefaults(
  given: StudyGiven,
  fans: Pick<LoadedFans, "own" | "all"> = { own: null, all: FANS },
): { readonly inputs: ChapterInputs; readonly taken: readonly DefaultTaken[] } {
  const taken: DefaultTaken[] = [];
  const note: Note = (key, value, otherwise, shownKey = key) => {
    if (value !== undefined) return value;
    const chosen = otherwise();
    const shown = typeof chosen === "string" ? chosen : formatQuantity(chosen, fieldKind(key));
    taken.push({ key: shownKey, value: shown, source: fieldRow(key).source });
    return chosen;
  };
  const house = deriveHouse(given.house, note);
  const tubes = deriveTubes(given.tubes, house, note);
  const headers = deriveHeaders(given.headers, tubes, note);
  const soil = deriveSoil(given.soil, note);
  return {
    inputs: {
      soil,
      house,
      tubes,
      headers,
      fan: deriveFan(given.fan, { tubes, headers, fans }, note),
    },
    taken,
  };
}

function deriveSoil(given: StudyGiven["soil"], note: Note): SoilInputs {
  const typical = findSoil(given.texture);
  return {
    ...given,
    dryDensity: note("soil.dryDensity", given.dryDensity, () => typical.dryDensity),
    moisture: note("soil.moisture", given.moisture, () => typical.moisture),
    quartz: note("soil.quartz", given.quartz, () => typical.quartz),
    layers: given.layers.map((layer, index) => deriveLayer(layer, index, note)),
  };
}

function deriveLayer(given: SoilLayerGiven, index: number, note: Note): SoilLayerInputs {
  const typical = findSoil(given.texture);
  const filled = (name: "dryDensity" | "moisture" | "quartz") =>
    note(
      `soil.layers.${name}`,
      given[name],
      () => typical[name],
      `soil.layers.${index + 1}.${name}`,
    );
  return {
    ...given,
    dryDensity: filled("dryDensity"),
    moisture: filled("moisture"),
    quartz: filled("quartz"),
  };
}

function deriveHouse(given: StudyGiven["house"], note: Note): HouseInputs {
  const run = given.shape === "lean-to" ? given.width : given.width / 2;
  const { curtain } = given;
  return {
    ...given,
    ridgeHeight: note(
      "house.ridgeHeight",
      given.ridgeHeight,
      () => rounded(given.eaveHeight + run * Math.tan(Math.PI / 6), 0.01),
    ),
    waterSurface: note(
      "house.waterSurface",
      given.waterSurface,
      () => rounded(given.waterVolume * DRUM_SURFACE, 0.1),
    ),
    heatSetPointDay: note(
      "house.heatSetPointDay",
      given.heatSetPointDay,
      () => given.heatSetPoint,
    ),
    curtain: curtain === null ? null : {
      ...curtain,
      closeBelowOutside: note(
        "house.curtain.closeBelowOutside",
        curtain.closeBelowOutside,
        () => given.heatSetPoint + 5,
      ),
    },
  };
}

function deriveTubes(given: StudyGiven["tubes"], house: HouseInputs, note: Note): TubesInputs {
  const volume = house.length * house.width * (house.eaveHeight + house.ridgeHeight) / 2;
  const airFlow = note(
    "tubes.airFlow",
    given.airFlow,
    () => rounded(volume * AIR_CHANGES / 3600, 0.001),
  );
  const { insideDiameter, outsideDiameter } = findTube(given.tube);
  const area = Math.PI / 4 * insideDiameter ** 2;
  const [room, across] = given.direction === "along"
    ? [house.length, house.width]
    : [house.width, house.length];
  const count = note(
    "tubes.count",
    given.count,
    () => Math.ceil(airFlow / (area * TUBE_SPEED)),
  );
  const gaps = Math.max(1, Math.ceil(count / given.layers) - 1);
  return {
    ...given,
    airFlow,
    count,
    spacing: note("tubes.spacing", given.spacing, () => {
      const fitting = Math.floor(100 * (across - 2 * SIDE_CLEARANCE) / gaps) / 100;
      return Math.max(Math.min(TUBE_SPACING, fitting), rounded(1.5 * outsideDiameter, 0.01));
    }),
    length: note(
      "tubes.length",
      given.length,
      () => Math.max(room - 2 * END_CLEARANCE, room / 2),
    ),
  };
}

function deriveHeaders(
  given: StudyGiven["headers"],
  tubes: TubesInputs,
  note: Note,
): HeadersInputs {
  const perGroup = tubes.count / given.groups;
  const { insideDiameter, outsideDiameter } = findTube(tubes.tube);
  const diameter = note(
    "headers.diameter",
    given.diameter,
    () => rounded(Math.max(insideDiameter * Math.sqrt(perGroup), 1.5 * outsideDiameter), 0.01),
  );
  return {
    ...given,
    diameter,
    returnDiameter: note("headers.returnDiameter", given.returnDiameter, () => diameter),
  };
}

function deriveFan(
  given: StudyGiven["fan"],
  upstream: {
    readonly tubes: TubesInputs;
    readonly headers: HeadersInputs;
    readonly fans: Pick<LoadedFans, "own" | "all">;
  },
  note: Note,
): FanInputs {
  const { tubes, headers, fans } = upstream;
  const { curves: _curves, ...rest } = given;
  const choose = (id?: string) =>
    chooseFan(tubes.airFlow, id, id === undefined ? fans.own ?? fans.all : fans.all);
  const fan = note("fan.fan", given.fan, () => choose().fan);
  return {
    ...rest,
    ...(fans.own === null ? {} : { ownFans: fans.own }),
    fan,
    count: note("fan.count", given.count, () => choose(fan).count),
    riserDiameter: note("fan.riserDiameter", given.riserDiameter, () => headers.diameter),
  };
}

function rounded(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(6));
}
