/**
 * From the study's words to a network: groups of tubes, layouts, tapered headers.
 *
 * @module
 */
import type { AirProperties } from "../air/mod.ts";
import { conduitOf, type TubePosition, type TubeProduct } from "../tubes/mod.ts";
import { inletLoss, stubObstruction } from "./inlets.ts";
import { findJunctions } from "./junctions.ts";
import type { HeaderLine, HeaderNetwork, Port } from "./network.ts";
import type { HeaderLayout, HeadersInputs } from "./types.ts";

/**
 * Splits the tubes over header pairs: whole layers where the numbers allow, else blocks side by side.
 *
 * @param positions all tubes
 * @param groups number of header pairs
 * @returns indices of the tubes of each group, in rising order across the field
 */
export function splitGroups(
  positions: readonly TubePosition[],
  groups: number,
): readonly (readonly number[])[] {
  const across = (tubes: readonly number[]): number[] =>
    [...tubes].sort((a, b) => positions[a]!.x - positions[b]!.x || a - b);
  const depths = [...new Set(positions.map(({ depth }) => depth))].sort((a, b) => a - b);
  const layers = depths.map((depth) =>
    positions.flatMap((position, i) => position.depth === depth ? [i] : [])
  );
  if (layers.length % groups === 0) {
    const each = layers.length / groups;
    return Array.from(
      { length: groups },
      (_, g) => across(layers.slice(g * each, (g + 1) * each).flat()),
    );
  }
  if (groups % layers.length === 0) {
    return layers.flatMap((layer) => blocks(across(layer), groups / layers.length));
  }
  return blocks(across(positions.map((_, i) => i)), groups);
}

function blocks(tubes: readonly number[], count: number): number[][] {
  return Array.from(
    { length: count },
    (_, k) =>
      tubes.slice(
        Math.round(k * tubes.length / count),
        Math.round((k + 1) * tubes.length / count),
      ),
  ).filter((block) => block.length > 0);
}

/**
 * Ports of both headers by layout. The supply is fed at the left end ("Z", "U"), in the middle
 * ("centre") or at both ends; the return leaves at the other end for "Z", else where the supply
 * enters.
 *
 * @param layout layout of the headers
 * @param count tubes of the group
 * @returns ports of supply and return
 */
function layoutPorts(
  layout: HeaderLayout,
  count: number,
): { readonly supply: readonly Port[]; readonly return: readonly Port[] } {
  const one = (after: number): readonly Port[] => [{ after, share: 1 }];
  const both: readonly Port[] = [{ after: 0, share: null }, { after: count, share: null }];
  const middle = Math.floor(count / 2);
  switch (layout) {
    case "Z":
      return { supply: one(0), return: one(count) };
    case "U":
      return { supply: one(0), return: one(0) };
    case "centre":
      return { supply: one(middle), return: one(middle) };
    case "two-ended":
      return { supply: both, return: both };
  }
}

/**
 * Diameters at the tubes of a header that narrows from its ports to its far end.
 *
 * @param count tubes
 * @param header diameter at the port, m, far diameter over that, and the ports
 * @returns diameter at each tube, m
 */
function taperedDiameters(
  count: number,
  header: { readonly diameter: number; readonly taper: number; readonly ports: readonly Port[] },
): readonly number[] {
  const distance = Array.from(
    { length: count },
    (_, i) => Math.min(...header.ports.map(({ after }) => Math.abs(i + 0.5 - after))),
  );
  const near = Math.min(...distance);
  const span = Math.max(...distance) - near;
  return distance.map((d) =>
    header.diameter * (1 - (1 - header.taper) * (span > 0 ? (d - near) / span : 0))
  );
}

/** One group of tubes on a pair of headers. */
export interface HeaderGroup {
  /** headers section of the study */
  readonly inputs: HeadersInputs;
  /** row of data/tubes */
  readonly product: TubeProduct;
  /** m of one tube */
  readonly length: number;
  /** velocity heads of a tube besides friction, inlet and exit */
  readonly extraLosses: number;
  /** velocity heads of the tube's exit */
  readonly exitLoss: number;
  /** place of each tube along the header, m, rising */
  readonly places: readonly number[];
  /** insertion of each tube end, m; that of the inputs where not given */
  readonly insertions?: readonly number[];
  /** further velocity heads of each tube: burrs, balancing orifices, mud */
  readonly added?: readonly number[];
  /** tubes that let nothing through */
  readonly blocked?: ReadonlySet<number>;
  /** properties of the air */
  readonly air: AirProperties;
}

/** Sheet of which corrugated drain tube is made, m (from memory). */
const CORRUGATED_SHEET = 0.001;

/** Thickness of the edge that a cut tube end turns towards the air, m. */
function edgeThickness(product: TubeProduct): number {
  if (product.wall === "corrugated") return CORRUGATED_SHEET;
  return (product.outsideDiameter - product.insideDiameter) / 2;
}

/**
 * Network of one group.
 *
 * @param group tubes and headers
 * @returns the network
 */
export function groupNetwork(group: HeaderGroup): HeaderNetwork {
  const { inputs, product, places } = group;
  const count = places.length;
  const ports = layoutPorts(inputs.layout, count);
  const { taper } = inputs;
  const protrudes = inputs.inlet === "protruding";
  const insertion = (tube: number): number =>
    group.insertions?.[tube] ?? (protrudes ? inputs.insertion : 0);
  const wall = edgeThickness(product) / product.insideDiameter;
  const gaps = places.slice(1).map((place, i) => place - places[i]!).filter((gap) => gap > 0);
  const lead = gaps.length > 0 ? Math.min(...gaps) : product.outsideDiameter;
  const line = (diameter: number, at: readonly Port[]): HeaderLine => {
    const diameters = taperedDiameters(count, { diameter, taper, ports: at });
    return {
      diameters,
      roughness: inputs.roughness,
      manning: inputs.manning,
      frictionFactor: null,
      obstructions: diameters.map((headerDiameter, tube) =>
        stubObstruction({
          outsideDiameter: product.outsideDiameter,
          insertion: insertion(tube),
          headerDiameter,
        }).loss
      ),
      ports: at,
      lead,
    };
  };
  return {
    tubes: places.map((position, tube) => ({
      ...conduitOf(product),
      position,
      length: group.length,
      minorLoss: inletLoss(insertion(tube) > 0 ? "protruding" : inputs.inlet, {
        insertion: insertion(tube) / product.insideDiameter,
        wall,
      }) + group.exitLoss + group.extraLosses + (group.added?.[tube] ?? 0),
      frictionFactor: null,
      open: !(group.blocked?.has(tube) ?? false),
    })),
    supply: line(inputs.diameter, ports.supply),
    return: line(inputs.returnDiameter, ports.return),
    junctions: findJunctions(inputs.junctions),
    air: group.air,
  };
}
