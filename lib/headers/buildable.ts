/**
 * Can the field be built: do tubes, holes and headers leave room for each other?
 *
 * @module
 */
import { showBoth } from "../units/mod.ts";
import { type Notice, notice } from "../basics/mod.ts";
import { allowance } from "../tubes/mod.ts";
import { type BuriedField, buryHeaders, fieldFall } from "./in_ground.ts";
import { holeLayout } from "./holes.ts";

/** Why a field cannot be built, with the key to change first. */
export interface BuildFault {
  /** key of the study file */
  readonly key: "headers.diameter" | "headers.groups" | "tubes.length";
  /** sentence for the reader */
  readonly text: string;
}

/** Soil over a header, m, below which it is in the way of the floor (common practice, no source). */
const LEAST_HEADER_COVER = 0.1;

const millimetres = (value: number): string => showBoth(value, "smallLength");

/**
 * What makes a field impossible to build: holes that overlap, headers that run into each other.
 *
 * @param field tubes and headers
 * @returns faults, none where it can be built
 */
export function buildFaults(field: BuriedField): readonly BuildFault[] {
  return [...holeFaults(field), ...besideFaults(field), ...endFaults(field)];
}

function holeFaults(field: BuriedField): readonly BuildFault[] {
  const worst = buryHeaders(field).map((pair) => ({ pair, layout: holeLayout(field, pair) }))
    .reduce((least, one) => one.layout.ligament < least.layout.ligament ? one : least);
  if (worst.layout.ligament > 0) return [];
  const { pair, layout } = worst;
  return [{
    key: "headers.diameter",
    text:
      `The holes of ${millimetres(layout.holes[0]!.diameter)} overlap on a header of ${
        millimetres(Math.min(field.headers.diameter, field.headers.returnDiameter))
      } that takes ${pair.members.length} tubes` +
      (pair.rows.length > 1 ? ` of ${pair.rows.length} layers` : "") +
      ': give each layer its own headers ("headers.groups"), or choose a larger header or more ' +
      '"tubes.spacing"',
  }];
}

/** Headers side by side on one level must not overlap. */
function besideFaults(field: BuriedField): readonly BuildFault[] {
  const pairs = buryHeaders(field);
  const lap = pairs.some((one, index) =>
    pairs.slice(index + 1).some((other) =>
      one.depth === other.depth &&
      Math.max(one.first - one.end, other.first - other.end) <
        Math.min(one.last + one.end, other.last + other.end)
    )
  );
  if (!lap) return [];
  const { groups } = field.headers;
  return [{
    key: "headers.groups",
    text: `The ${groups} pairs of headers ("headers.groups") overlap side by side: ` +
      "choose as many as there are layers, or a number that splits each layer evenly, with more " +
      'than a hole\'s width ("tubes.spacing") between them',
  }];
}

/** Supply and return header must leave some tube between them. */
function endFaults(field: BuriedField): readonly BuildFault[] {
  const { diameter, returnDiameter } = field.headers;
  const runs = buryHeaders(field).flatMap(({ rows }) => rows).map(({ run }) => 2 * run);
  const least = Math.max((diameter + returnDiameter) / 2, ...runs);
  if (field.tubes.length > least) return [];
  return [{
    key: "tubes.length",
    text:
      `Tubes of ${
        showBoth(field.tubes.length, "length")
      } between the centres of the headers leave no ` +
      `straight tube between headers of ${millimetres(diameter)} and ${
        millimetres(returnDiameter)
      }: expected more than ${showBoth(least, "length")}`,
  }];
}

/** Warnings about what cannot be built, and about what can, but badly. */
export function buildNotices(field: BuriedField): readonly Notice[] {
  return [
    ...buildFaults(field).map(({ text }) => `${text}.`),
    ...buildDoubts(field),
  ].map((text) => notice("warning", "headers", text));
}

/** What can be built, but badly, in sentences for the reader. */
export function buildDoubts(field: BuriedField): readonly string[] {
  return [...wallDoubts(field), ...coverDoubts(field)];
}

function wallDoubts(field: BuriedField): readonly string[] {
  const layouts = buryHeaders(field).map((pair) => holeLayout(field, pair));
  const worst = layouts.reduce((least, one) => one.strengthLeft < least.strengthLeft ? one : least);
  if (worst.strengthLeft >= allowance("least ligament") || worst.ligament <= 0) return [];
  return [
    `Only ${
      millimetres(worst.ligament)
    } of wall is left between the header's holes (common practice is 30 % of the pitch, no ` +
    "source): use a larger header, more spacing or moulded take-offs.",
  ];
}

/** Headers close under the floor, at the end where they lie highest. */
function coverDoubts(field: BuriedField): readonly string[] {
  const cover = headerCover(field);
  if (cover >= LEAST_HEADER_COVER) return [];
  return [
    cover < 0
      ? `The supply header rises ${
        millimetres(-cover)
      } above the floor: lay the tubes deeper, or ` +
        "use more, smaller headers."
      : `Only ${
        millimetres(cover)
      } of soil covers the supply header: lay the tubes deeper, or use ` +
        "more, smaller headers.",
  ];
}

/** Soil over the highest header, m; negative where it sticks out of the floor. */
export function headerCover(field: BuriedField): number {
  const { diameter, returnDiameter } = field.headers;
  const highest = Math.min(...buryHeaders(field).map(({ depth }) => depth));
  const half = fieldFall(field) / 2;
  return Math.min(highest - half - diameter / 2, highest + half - returnDiameter / 2);
}
