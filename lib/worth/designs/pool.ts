/** Designs that may be given a year next, by what is foretold of them. @module */
import { ADDED_KEYS, choiceKey, type DesignAxes } from "./choices.ts";
import { addedArea } from "./front_area.ts";
import { boardCost } from "./field_money.ts";
import type { DesignChoice, DesignQuestion } from "./types.ts";
import { correction, type Foretold, type KnownDesign } from "./correction.ts";
import type { PresentValues } from "./present_values.ts";

/** A design within the limits with what it costs and what the quick estimate makes of it. */
export interface PooledDesign {
  /** what was chosen; control and board may still be chosen otherwise */
  readonly choice: DesignChoice;
  /** money of the first cost less grants */
  readonly capital: number;
  /** kWh a year by the quick estimate */
  readonly saved: number;
  /** kWh a year of the fans' electricity, likewise */
  readonly fanEnergy: number;
}

/** A design whose year was run, with what it costs. */
export interface PricedKnown extends KnownDesign {
  /** money of the first cost less grants */
  readonly capital: number;
  /** true where it keeps all limits */
  readonly within: boolean;
}

/** A design as it would be run, with what is foretold. */
interface Candidate extends Foretold {
  readonly choice: DesignChoice;
  readonly cost: number;
}

/** A year with its first cost. */
type Priced = Foretold & { readonly cost: number };

/** One design in so many is chosen for the crop's hours, the others for heat: our own choice. */
const FOR_HOURS = 4;

/** What the choice hangs on. */
export interface PromisingQuestion {
  /** the study */
  readonly question: DesignQuestion;
  /** what may be chosen */
  readonly axes: DesignAxes;
  /** designs run, the study's own first */
  readonly known: readonly PricedKnown[];
  /** what a year is worth in money of today */
  readonly values: PresentValues;
  /** true for a design that is out of the question: run, or refused */
  readonly done: (key: string) => boolean;
}

/**
 * The designs worth a year, the first the most: the one of greatest net savings and the one of cheapest
 * heat by what is foretold where they better those run; then, one upon the other, those that add most to
 * what is had for every sum of money, in heat and at times in hours. Control and board are chosen for
 * each by what is foretold.
 *
 * @param pool designs to choose from
 * @param asked what the choice hangs on
 * @param count of designs wanted
 */
export function promising(
  pool: Iterable<PooledDesign>,
  { question, axes, known, values, done }: PromisingQuestion,
  count: number,
): readonly DesignChoice[] {
  const foretell = correction(known);
  const controls = withMiddles(axes.chargeStart).flatMap((chargeStart) =>
    withMiddles(axes.dischargeBelow).map((dischargeBelow) => ({ chargeStart, dischargeBelow }))
  );
  const candidates: Candidate[] = [];
  const spent = ({ cost, fanEnergy }: Priced) =>
    values.upkeep * cost + values.electricity * fanEnergy;
  const net = (one: Priced) => values.heat * one.saved - spent(one);
  for (const { choice, capital, ...estimate } of pool) {
    for (const edgeBoard of axes.edgeBoard) {
      const cost = capital - boardCost(choice, question) +
        boardCost({ ...choice, edgeBoard }, question);
      const open = controls.map((control): Candidate => {
        const one = { ...choice, ...control, edgeBoard };
        return { choice: one, cost, ...foretell({ choice: one, estimate }) };
      }).filter(({ choice: one }) => !done(choiceKey(one)));
      const best = [greatest(open, ({ saved }) => saved), greatest(open, net)];
      candidates.push(...new Set(best.filter((one) => one !== null)));
    }
  }
  const within = known.filter((one) => one.within);
  const picked: Candidate[] = [];
  const pick = (one: Candidate | null) => {
    if (one !== null && !picked.includes(one) && picked.length < count) picked.push(one);
  };
  const better = (value: (design: Priced) => number) => {
    const had = within.map(({ capital, year }) => value({ ...year, cost: capital }));
    pick(greatest(candidates, value, Math.max(...had)));
  };
  better(net);
  better((one) => one.saved / spent(one));
  const hoursOf = (hours: number) => Math.max(...known.map(({ year }) => year.hours)) + 1 - hours;
  const most = Math.max(
    ...known.map(({ capital }) => capital),
    ...candidates.map(({ cost }) => cost),
  );
  const kinds = {
    heat: ({ saved }: Foretold) => saved,
    hours: ({ hours }: Foretold) => hoursOf(hours),
  };
  while (picked.length < Math.min(count, candidates.length)) {
    const gain = kinds[picked.length % FOR_HOURS === FOR_HOURS - 1 ? "hours" : "heat"];
    const area = addedArea([
      ...within.map(({ capital, year }) => ({ cost: capital, gain: gain(year) })),
      ...picked.map((one) => ({ cost: one.cost, gain: gain(one) })),
    ], most);
    const left = candidates.filter((one) => !picked.includes(one));
    const next = greatest(left, (one) => area({ cost: one.cost, gain: gain(one) }), 0) ??
      greatest(left, net);
    pick(next);
  }
  return picked.map(({ choice }) => choice);
}

/** Values and those half way between them. */
function withMiddles(values: readonly number[]): readonly number[] {
  return values.flatMap((value, k) => k === 0 ? [value] : [(values[k - 1]! + value) / 2, value]);
}

/** The one of greatest value, where that is above what is had. */
function greatest<T>(all: readonly T[], value: (one: T) => number, had = -Infinity): T | null {
  let [best, most]: [T | null, number] = [null, had];
  for (const one of all) {
    const here = value(one);
    if (here > most) [best, most] = [one, here];
  }
  return best;
}

/** A design with control and board as the study has them. */
export function plainField(choice: DesignChoice, own: DesignChoice): DesignChoice {
  const plain: Record<string, unknown> = { ...choice };
  for (const key of ADDED_KEYS) plain[key] = own[key];
  return plain as unknown as DesignChoice;
}

/** Such a design as a word. */
export function fieldKey(choice: DesignChoice, own: DesignChoice): string {
  return choiceKey(plainField(choice, own));
}
