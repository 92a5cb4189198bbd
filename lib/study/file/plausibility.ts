/** Faults between inputs, and values that are possible but unusual. @module */
import { HOUR, InputError, type Notice, notice } from "../../basics/mod.ts";
import type { Place } from "../../climate/types.ts";
import { suctionFault } from "../../store/mod.ts";
import { dailySun } from "../../sun/mod.ts";
import { buildFaults } from "../../headers/mod.ts";
import { findTube, tubePositions } from "../../tubes/mod.ts";
import { formatQuantity, parseQuantity, showBoth, showNumber, showUs } from "../../units/mod.ts";
import type { ChapterInputs } from "./derive.ts";
import { fieldKind, FIELDS } from "./fields.ts";
import { GROUND_RULES } from "./ground_rules.ts";
import type { StudyGiven } from "./schema.ts";
import { type KeyPath, placeOf, type YamlSource } from "./yaml_source.ts";

type Checked = Omit<StudyGiven, keyof ChapterInputs> & ChapterInputs;

interface Rule {
  readonly path: KeyPath;
  readonly broken: (study: Checked) => boolean;
  readonly message: string | ((study: Checked) => string);
}

/** Least soil between the floor and the top of a tube, m. */
const LEAST_COMPUTED_COVER = 0.02;
/** Air changes of the house in an hour beyond which house and tubes cannot be told apart, 1/h. */
const MOST_CHANGES = 500;
/** Air speed in the tubes beyond which no fan of a greenhouse works, m/s. */
const MOST_COMPUTED_SPEED = 50;

/** A name that is safe as the name of a folder on every system. */
const FOLDER_NAME = /^[A-Za-z0-9][A-Za-z0-9._-]{0,79}$/;

const RULES: readonly Rule[] = [
  {
    path: ["study", "name"],
    broken: ({ study }) => study.name !== undefined && !FOLDER_NAME.test(study.name),
    message: '"study.name" names a folder: letters, digits, ".", "_" and "-" only',
  },
  {
    path: ["house", "ridgeHeight"],
    broken: ({ house }) => house.ridgeHeight <= house.eaveHeight,
    message: '"house.ridgeHeight" must be above "house.eaveHeight"',
  },
  {
    path: ["house", "kneeWallHeight"],
    broken: ({ house }) => house.shape !== "hoop" && house.kneeWallHeight > house.eaveHeight,
    message: '"house.kneeWallHeight" must not be above "house.eaveHeight"',
  },
  {
    path: ["house", "ventSetPoint"],
    broken: ({ house }) =>
      house.ventSetPoint <= Math.max(house.heatSetPoint, house.heatSetPointDay),
    message: '"house.ventSetPoint" must be above "house.heatSetPoint" and "house.heatSetPointDay"',
  },
  {
    path: ["store", "chargeStop"],
    broken: ({ store }) => store.chargeStop >= store.chargeStart,
    message: '"store.chargeStop" must be below "store.chargeStart"; otherwise the fan hunts',
  },
  {
    path: ["store", "dischargeStop"],
    broken: ({ store }) => store.dischargeStop >= store.dischargeStart,
    message: '"store.dischargeStop" must be below "store.dischargeStart"; otherwise the fan hunts',
  },
  {
    path: ["store", "dischargeBelow"],
    broken: ({ store }) => store.dischargeBelow >= store.chargeAbove,
    message: '"store.dischargeBelow" must be below "store.chargeAbove"',
  },
  ...GROUND_RULES,
  {
    path: ["store", "collector", "area"],
    broken: ({ store, tubes }) => collectorFault(store, tubes) !== null,
    message: ({ store, tubes }) => collectorFault(store, tubes)!,
  },
  {
    path: ["tubes", "layers"],
    broken: ({ tubes }) => tubes.layers > tubes.count,
    message: '"tubes.layers" must not be above "tubes.count"',
  },
  {
    path: ["headers", "groups"],
    broken: ({ headers, tubes }) => headers.groups > tubes.count,
    message: '"headers.groups" must not be above "tubes.count"',
  },
  {
    path: ["tubes", "spacing"],
    broken: ({ tubes }) => inOneLayer(tubes) > 1 && tubes.spacing < outsideDiameter(tubes),
    message: ({ tubes }) =>
      `"tubes.spacing" makes the tubes overlap: expected at least their outside diameter, ${
        millimetres(outsideDiameter(tubes))
      }`,
  },
  {
    path: ["tubes", "layerSpacing"],
    broken: ({ tubes }) => tubes.layers > 1 && tubes.layerSpacing < outsideDiameter(tubes),
    message: ({ tubes }) =>
      `"tubes.layerSpacing" makes the layers overlap: expected at least the outside diameter of the ` +
      `tubes, ${millimetres(outsideDiameter(tubes))}`,
  },
  {
    path: ["tubes", "depth"],
    broken: ({ tubes }) => tubes.depth < outsideDiameter(tubes) / 2 + LEAST_COMPUTED_COVER,
    message: ({ tubes }) =>
      `"tubes.depth" leaves less than ${
        millimetres(LEAST_COMPUTED_COVER)
      } of soil above the upper tubes: expected at least ${
        millimetres(outsideDiameter(tubes) / 2 + LEAST_COMPUTED_COVER)
      } to their centres`,
  },
  {
    path: ["tubes", "count"],
    broken: ({ tubes, house, store }) =>
      fieldWidth(tubes) > roomAcross(tubes, house) + 2 * (store.outsideSoil - 0.5),
    message: ({ tubes, house }) =>
      `Cannot compute a field of tubes ${
        showBoth(fieldWidth(tubes), "length")
      } wide under a house that has ${
        showBoth(roomAcross(tubes, house), "length")
      }: use fewer tubes, closer spacing or more layers`,
  },
  {
    path: ["tubes", "airFlow"],
    broken: ({ tubes }) => designSpeed(tubes) > MOST_COMPUTED_SPEED,
    message: ({ tubes }) =>
      `"tubes.airFlow" gives ${showBoth(designSpeed(tubes), "speed")} in ${tubes.count} tubes, ` +
      `at most ${showBoth(MOST_COMPUTED_SPEED, "speed")} can be computed: use more or wider tubes`,
  },
  {
    path: ["tubes", "airFlow"],
    broken: ({ tubes, house }) => airChanges(tubes, house) > MOST_CHANGES,
    message: ({ tubes, house }) =>
      `"tubes.airFlow" changes the air of the house ${
        showNumber(airChanges(tubes, house), 0)
      } times an hour: expected at most ${MOST_CHANGES}; 5 to 20 are usual`,
  },
  ...(["diameter", "returnDiameter"] as const).map((key): Rule => ({
    path: ["headers", key],
    broken: ({ headers, tubes }) =>
      headers[key] * headers.taper <= outsideDiameter(tubes) &&
      (key === "diameter" || headers.returnDiameter !== headers.diameter),
    message: ({ headers, tubes }) =>
      `Cannot put tubes of ${millimetres(outsideDiameter(tubes))} outside diameter into a header ` +
      `whose narrow end is ${millimetres(headers[key] * headers.taper)} ("headers.${key}"): ` +
      "choose a larger header",
  })),
];

type Tubes = ChapterInputs["tubes"];

const outsideDiameter = (tubes: Tubes): number => findTube(tubes.tube).outsideDiameter;
const inOneLayer = (tubes: Tubes): number => Math.ceil(tubes.count / tubes.layers);
const fieldWidth = (tubes: Tubes): number => (inOneLayer(tubes) - 1) * tubes.spacing;
const millimetres = (value: number): string => showBoth(value, "smallLength");

function roomAcross(tubes: Tubes, house: ChapterInputs["house"]): number {
  return tubes.direction === "along" ? house.width : house.length;
}

/** 1/h */
function airChanges(tubes: Tubes, house: ChapterInputs["house"]): number {
  const height = (house.eaveHeight + house.ridgeHeight) / 2;
  return HOUR * tubes.airFlow / (house.length * house.width * height);
}

function collectorFault({ collector }: ChapterInputs["store"], tubes: Tubes): string | null {
  return collector === undefined ? null : suctionFault(collector.area, tubes.airFlow);
}

function designSpeed(tubes: Tubes): number {
  const area = Math.PI / 4 * findTube(tubes.tube).insideDiameter ** 2;
  return tubes.airFlow / (tubes.count * area);
}

/** Inputs that contradict each other. */
export function crossFaults(study: Checked, source: YamlSource): readonly InputError[] {
  const faults = RULES.filter((rule) => rule.broken(study))
    .map(({ message, path }) =>
      new InputError(
        typeof message === "string" ? message : message(study),
        placeOf(path, source),
      )
    );
  return faults.length > 0 ? faults : buildingFaults(study, source);
}

/** What makes tubes and headers impossible to build, where they make sense one by one. */
function buildingFaults(
  { tubes, headers }: Checked,
  source: YamlSource,
): readonly InputError[] {
  const { length, slope } = tubes;
  const positions = tubePositions(tubes);
  const product = findTube(tubes.tube);
  return buildFaults({ tubes: { positions, product, length }, slope, headers })
    .map(({ key, text }) => new InputError(text, placeOf(key.split("."), source)));
}

/** Notices for values outside the usual range of the field table. */
export function unusualValues(study: Checked): readonly Notice[] {
  const notices: Notice[] = [];
  for (const row of FIELDS.values()) {
    if (row.usualLeast === "" && row.usualMost === "") continue;
    const value = row.key.split(".").reduce<unknown>(
      (part, name) => (part as Record<string, unknown> | null | undefined)?.[name],
      study,
    );
    const values = Array.isArray(value) ? value : [value];
    if (!values.every((one) => typeof one === "number")) continue;
    const kind = fieldKind(row.key);
    const low = row.usualLeast === "" ? -Infinity : parseQuantity(row.usualLeast, kind);
    const high = row.usualMost === "" ? Infinity : parseQuantity(row.usualMost, kind);
    const odd = values.find((one) => {
      const slack = 1e-9 * Math.max(1, Math.abs(one));
      return one < low - slack || one > high + slack;
    });
    if (odd === undefined) continue;
    const both = (one: number) => {
      const us = showUs(one, kind);
      return us === "" ? formatQuantity(one, kind) : `${formatQuantity(one, kind)} (${us})`;
    };
    notices.push(notice(
      "warning",
      "study",
      `${row.key} is ${both(odd)}, outside the usual ${
        [low, high].map((end) => Number.isFinite(end) ? both(end) : "").join(" to ")
      }: check it`,
    ));
  }
  return notices;
}

/** Farther apart than this in degrees, study and weather file are of different climates. */
export const FAR = 0.5;

/** Latitude of the polar circles, degrees. */
const POLAR_CIRCLE = 66.56;

/** Says so where the weather comes from elsewhere than the study's place, from the far south or the poles. */
export function placeNotices(study: Place, climate: Place): readonly Notice[] {
  const list: Notice[] = [];
  const spot = ({ name, latitude, longitude }: Place) =>
    `${name} (${latitude} deg, ${longitude} deg)`;
  const apart = Math.max(
    Math.abs(study.latitude - climate.latitude),
    Math.abs(study.longitude - climate.longitude),
  );
  if (apart > FAR) {
    list.push(notice(
      "warning",
      "study",
      `The weather is for ${spot(climate)}, not ${spot(study)}: the study is computed for ` +
        "the place of the weather file",
    ));
  }
  if (climate.latitude < 0) {
    list.push(notice(
      "warning",
      "study",
      "The place is south of the equator, where winter is June to August: the search for the first frost " +
        "starts on 1 July and soil freezing is checked from November to April, so " +
        "ignore these two results",
    ));
  }
  if (Math.abs(climate.latitude) > POLAR_CIRCLE) {
    list.push(notice("warning", "study", polarWords(climate.latitude)));
  }
  return list;
}

/** What does not hold beyond the polar circles. */
function polarWords(latitude: number): string {
  const days = Array.from({ length: 365 }, (_, day) => dailySun(latitude, day + 1).daylight);
  const dark = days.filter((daylight) => daylight === 0).length;
  const bright = days.filter((daylight) => daylight >= 86400).length;
  return `The place is beyond the polar circle: the sun stays down for ${dark} days and up for ${bright}. ` +
    "Nothing is charged in the polar night. Not valid for such places: the split of global radiation " +
    "into direct and diffuse (31 to 42 degrees), the spread of a generated year's light over its hours " +
    "and its days, and the sky's long-wave radiation below -13 degC dew point; use measured direct, " +
    "diffuse and long-wave radiation. On summer nights the sun is behind a wall that faces " +
    "away from the equator. Thawing of permafrost under the house, and its effect on footings, is " +
    "not modelled: ask a geotechnical engineer with permafrost experience";
}
