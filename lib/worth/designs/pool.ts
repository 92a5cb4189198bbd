/** Designs that may be given a year next, by what is foretold of them. @module */
import { ADDED_KEYS, choiceKey, type DesignAxes } from "./choices.ts";
import { addedArea } from "./front_area.ts";
import { boardCost } from "./field_money.ts";
import type { DesignChoice, DesignQuestion } from "./types.ts";
import { correction, type Foretold, type KnownDesign } from "./correction.ts";
import type { PresentValues } from "./present_values.ts";
import type { SievedDesign } from "./sieve.ts";

/** A design within the limits, whose control and board may still be chosen otherwise. */
export type PooledDesign = Pick<SievedDesign, "choice" | "capital" | "saved" | "fanEnergy">;

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

/** What a design comes to in money of today, by its year and its first cost. */
function moneyBy(values: PresentValues) {
  const spent = ({ cost, fanEnergy }: Priced) =>
    values.upkeep * cost + values.electricity * fanEnergy;
  return {
    net: (one: Priced) => values.heat * one.saved - spent(one),
    heatForMoney: (one: Priced) => one.saved / spent(one),
  };
}

/**
 * The pool as it would be run: with and without the board, each with the control of which most heat is
 * foretold and with that of the greatest net savings.
 */
function candidatesOf(
  pool: Iterable<PooledDesign>,
  { question, axes, known, values, done }: PromisingQuestion,
): readonly Candidate[] {
  const foretell = correction(known);
  const { net } = moneyBy(values);
  const controls = withMiddles(axes.chargeStart).flatMap((chargeStart) =>
    withMiddles(axes.dischargeBelow).map((dischargeBelow) => ({ chargeStart, dischargeBelow }))
  );
  return [...pool].flatMap(({ choice, capital, saved, fanEnergy }) =>
    axes.edgeBoard.flatMap((edgeBoard) => {
      const cost = capital - boardCost(choice, question) +
        boardCost({ ...choice, edgeBoard }, question);
      const open = controls.map((control): Candidate => {
        const one = { ...choice, ...control, edgeBoard };
        return { choice: one, cost, ...foretell({ choice: one, estimate: { saved, fanEnergy } }) };
      }).filter(({ choice: one }) => !done(choiceKey(one)));
      const best = [greatest(open, ({ saved }) => saved), greatest(open, net)];
      return [...new Set(best.filter((one) => one !== null))];
    })
  );
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
  asked: PromisingQuestion,
  count: number,
): readonly DesignChoice[] {
  const candidates = candidatesOf(pool, asked);
  const had = asked.known.map(({ capital, year, within }) => ({ ...year, cost: capital, within }));
  const within = had.filter((one) => one.within);
  const { net, heatForMoney } = moneyBy(asked.values);
  const picked: Candidate[] = [];
  const pick = (one: Candidate | null) => {
    if (one !== null && !picked.includes(one) && picked.length < count) picked.push(one);
  };
  for (const value of [net, heatForMoney]) {
    pick(greatest(candidates, value, Math.max(...within.map(value))));
  }
  const mostHours = Math.max(...had.map(({ hours }) => hours)) + 1;
  const gains = {
    heat: ({ saved }: Foretold) => saved,
    hours: ({ hours }: Foretold) => mostHours - hours,
  };
  const dearest = Math.max(...[...had, ...candidates].map(({ cost }) => cost));
  while (picked.length < Math.min(count, candidates.length)) {
    const gain = gains[picked.length % FOR_HOURS === FOR_HOURS - 1 ? "hours" : "heat"];
    const priced = (one: Priced) => ({ cost: one.cost, gain: gain(one) });
    const area = addedArea([...within, ...picked].map(priced), dearest);
    const left = candidates.filter((one) => !picked.includes(one));
    pick(greatest(left, (one) => area(priced(one)), 0) ?? greatest(left, net));
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
