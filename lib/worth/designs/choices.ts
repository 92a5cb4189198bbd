/** What the search may choose, around the study's own design. @module */
import { FANS } from "../../fan/mod.ts";
import { limitsAround, TUBES } from "../../tubes/mod.ts";
import { findPrice, type PriceList } from "../prices/price_list.ts";
import type { DesignChoice, DesignQuestion } from "./types.ts";

/** Values of each part of a design, rising; the study's own is always among them. */
export type DesignAxes = { readonly [Key in keyof DesignChoice]: readonly DesignChoice[Key][] };

/** Shares of the study's own value that are tried: our own choice. */
const COUNTS = [0.33, 0.5, 0.67, 0.83, 1, 1.2, 1.5];
const LENGTHS = [0.4, 0.6, 0.8, 1];
const SPACINGS = [0.75, 1, 1.25, 1.5];
const DEPTHS = [0.8, 1, 1.3, 1.6];
const FLOWS = [0.4, 0.5, 0.7, 0.85, 1, 1.2, 1.5];
const HEADERS = [0.67, 0.83, 1, 1.25];
const STARTS = [0.6, 1, 1.6];
/** K over the study's own limit for discharging */
const BELOWS = [-2, 0, 2, 4];
/** m; no tube shorter than this is made of a cut coil */
const SHORTEST = 3;

/** Share of the study's own value within which another is the same one. */
const ALIKE = 0.005;

const rounded = (value: number) => Math.round(1000 * value) / 1000;

const rising = (values: readonly number[], own: number) =>
  [
    ...new Set(
      values.map(rounded).filter((value) => Math.abs(value - own) > ALIKE * Math.abs(own)),
    ),
    own,
  ].sort((a, b) => a - b);

/** The study's own design. */
export function ownChoice({ tubes, headers, fan, request }: DesignQuestion): DesignChoice {
  const { tube, count, length, spacing, layers, depth, airFlow } = tubes;
  const { chargeStart, dischargeBelow } = request.inputs;
  return {
    tube,
    count,
    length,
    spacing,
    layers,
    depth,
    airFlow,
    header: headers.diameter,
    fan: fan.fan,
    fans: fan.count,
    edgeBoard: false,
    chargeStart,
    dischargeBelow,
  };
}

/** What may be chosen: tubes and fans that have a price, lengths that come out of a coil. */
export function designAxes(question: DesignQuestion): DesignAxes {
  const own = ownChoice(question);
  const { prices, coilLength } = question.worth.inputs;
  const { floor } = limitsAround(question.tubes, {
    house: question.house,
    footingDepth: question.house.footingDepth,
  });
  const longest = Math.max(1, floor.along - 2 * floor.headerRoom);
  const cuts = coilLength === null ? [] : [1, 2, 3, 4, 5, 6].map((parts) => coilLength / parts);
  const near = (value: number, factors: readonly number[]) => factors.map((each) => each * value);
  return {
    tube: withPrice(prices, "tube", TUBES, own.tube, "m"),
    count: rising(
      near(own.count, COUNTS).map((count) => Math.max(1, Math.round(count))),
      own.count,
    ),
    length: rising(
      [...near(longest, LENGTHS), ...cuts].filter((cut) => cut >= SHORTEST && cut <= longest),
      own.length,
    ),
    spacing: rising(near(own.spacing, SPACINGS), own.spacing),
    layers: rising([1, 2, 3], own.layers),
    depth: rising(near(own.depth, DEPTHS), own.depth),
    airFlow: rising(near(own.airFlow, FLOWS), own.airFlow),
    header: rising(near(own.header, HEADERS), own.header),
    fan: withPrice(prices, "fan", [...question.fan.ownFans ?? [], ...FANS], own.fan, "pieces"),
    fans: rising([1, 2, 3], own.fans),
    edgeBoard: boardPrice(prices) === null ? [false] : [false, true],
    chargeStart: rising(near(own.chargeStart, STARTS), own.chargeStart),
    dischargeBelow: rising(BELOWS.map((more) => own.dischargeBelow + more), own.dischargeBelow),
  };
}

/** Money for a square metre of board in the ground; null where the list has none. */
export function boardPrice(prices: PriceList | null): number | null {
  return prices === null ? null : findPrice(prices, "measure:perimeter-board", "m2")?.price ?? null;
}

function withPrice(
  prices: PriceList | null,
  kind: "tube" | "fan",
  things: readonly { readonly id: string }[],
  own: string,
  unit: string,
): readonly string[] {
  const priced = things.filter(({ id }) =>
    prices !== null && findPrice(prices, `${kind}:${id}`, unit) !== null
  );
  return [...new Set([own, ...priced.map(({ id }) => id)])];
}

/** Parts of a design that its headers hang on. */
export const HEADER_KEYS = [
  "tube",
  "count",
  "length",
  "spacing",
  "layers",
  "depth",
  "airFlow",
  "header",
] as const satisfies readonly (keyof DesignChoice)[];

/** Parts of a design that the quick estimate tells apart. */
export const QUICK_KEYS = [...HEADER_KEYS, "fan", "fans"] as const;

/** Parts of a design that any field may have, and that only the year tells apart. */
export const ADDED_KEYS = [
  "edgeBoard",
  "chargeStart",
  "dischargeBelow",
] as const satisfies readonly (keyof DesignChoice)[];

/** All parts of a design. */
export const ALL_KEYS = [
  ...QUICK_KEYS,
  ...ADDED_KEYS,
] as const satisfies readonly (keyof DesignChoice)[];

/**
 * Designs with one part changed: a number to the next value on either side, anything else to each other
 * value.
 */
export function neighbours(
  choice: DesignChoice,
  axes: DesignAxes,
  keys: readonly (keyof DesignChoice)[],
): readonly DesignChoice[] {
  return keys.flatMap((key) =>
    besideOf(choice[key], axes[key]).map((other): DesignChoice => ({ ...choice, [key]: other }))
  );
}

function besideOf(value: DesignChoice[keyof DesignChoice], values: readonly unknown[]) {
  if (typeof value !== "number") return values.filter((other) => other !== value);
  const numbers = values as readonly number[];
  return [
    numbers.findLast((other) => other < value),
    numbers.find((other) => other > value),
  ].filter((other) => other !== undefined);
}

/** Parts whose values may lie between those of the axes. */
const BETWEEN_KEYS = ["count", "length", "spacing", "depth", "airFlow", "header"] as const;

/** Designs with one part changed to half way to the next value on either side. */
export function halfSteps(choice: DesignChoice, axes: DesignAxes): readonly DesignChoice[] {
  return BETWEEN_KEYS.flatMap((key) =>
    besideOf(choice[key], axes[key]).flatMap((other) => {
      const middle = (choice[key] + (other as number)) / 2;
      const value = key === "count" ? Math.round(middle) : rounded(middle);
      return value === choice[key] || value === other ? [] : [{ ...choice, [key]: value }];
    })
  );
}

/** Parts that hang together, so that a limit may forbid to change one of them alone. */
const PAIRS = [
  ["count", "airFlow"],
  ["count", "layers"],
  ["count", "spacing"],
  ["count", "length"],
  ["tube", "count"],
  ["tube", "airFlow"],
  ["tube", "spacing"],
  ["airFlow", "header"],
  ["airFlow", "fan"],
  ["airFlow", "fans"],
  ["layers", "depth"],
] as const satisfies readonly (readonly (keyof DesignChoice)[])[];

/** Designs with two parts changed that hang together, each as {@link neighbours} changes it. */
export function pairNeighbours(choice: DesignChoice, axes: DesignAxes): readonly DesignChoice[] {
  return PAIRS.flatMap(([first, second]) =>
    neighbours(choice, axes, [first]).flatMap((changed) => neighbours(changed, axes, [second]))
  );
}

/** A design as a word, to tell whether it was looked at already. */
export function choiceKey(choice: DesignChoice): string {
  return ALL_KEYS.map((key) => choice[key]).join(" ");
}
