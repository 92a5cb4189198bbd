import { assert, assertEquals } from "@std/assert";
import { EXERCISES } from "../../lib/show/exercises.ts";
import { type Exercise, judge } from "../../lib/show/kit/exercise.ts";
import { CHAPTERS } from "../../lib/study/mod.ts";
import {
  displayUnit,
  type Kind,
  KINDS,
  parseQuantity,
  showSi,
  showUs,
} from "../../lib/units/mod.ts";
import type { Typed } from "./typed.ts";

/**
 * Forms worked out by hand beside the exercises: SI and US units by NIST SP 811 (2008) appendix B.8,
 * 1 kWh = 3.6 MJ = 3.412142 kBtu, 1 W = 3.412142 Btu/h, 1 W/K = 1.895634 Btu/(h degF),
 * 1 W/(m² K) = 0.1761102 Btu/(h ft² degF), 1 inH2O = 249.0889 Pa, 1 ft = 0.3048 m.
 */
const TYPED: Record<string, Typed> = {};
for (const name of ["study", ...CHAPTERS.map(({ name }) => name)]) {
  const listed: { readonly TYPED: Readonly<Record<string, Typed>> } = await import(
    `./${name}/typed_answers.ts`
  );
  Object.assign(TYPED, listed.TYPED);
}

for (const one of EXERCISES) {
  Deno.test(`exercise ${one.id}: answers as people type them (NIST SP 811, 2008)`, () => {
    // Source: NIST SP 811 (2008) [nist-sp811-2008] appendix B.8 for the units; the sums by hand
    const typed = TYPED[one.id];
    assert(typed !== undefined, `no typed answers for ${one.id}`);
    for (const answer of typed.right) {
      assertEquals(judge(one, answer).state, "right", `${answer}: ${judge(one, answer).message}`);
    }
    for (const [answer, hint] of typed.wrong) {
      const { state, message } = judge(one, answer);
      assert(state !== "right", String(answer));
      if (typeof hint === "number") assertEquals(message, one.slips[hint]!.hint, String(answer));
      else assert(hint.test(message), `${answer}: ${message}`);
    }
  });
}

/** Kinds under which the workbook prints a quantity, and the answer's unit over the inside one of each. */
const SHOWN: Partial<Record<Kind, readonly (readonly [kind: Kind, per: number])[]>> = {
  energy: [["energy", 1]],
  power: [["power", 1], ["heatFlow", 1]],
  length: [["length", 1], ["depth", 1], ["smallLength", 1]],
  pressure: [["pressure", 1]],
  conductance: [["conductance", 1]],
  transmittance: [["transmittance", 1]],
  share: [["share", 1], ["sharePrecise", 1]],
  time: [["hours", 3600], ["days", 86400]],
  degreeDays: [["degreeDays", 1]],
  number: [["number", 1], ["ratio", 1], ["count", 1]],
  angle: [["angle", 1]],
};

Deno.test("every exercise takes its answer in every unit the workbook prints", () => {
  // Property: what stands in a table can be copied into the cell, thin spaces and all
  for (const one of EXERCISES) {
    if (one.kind === "choice") continue;
    for (const [kind, per] of SHOWN[one.kind]!) {
      const stored = Number(one.answer) / per;
      const { si, us } = displayUnit(kind);
      const digits = (factor: number) =>
        Math.max(0, 4 - Math.floor(Math.log10(Math.abs(stored * factor))));
      const shown = [showSi(stored, kind, digits(si.factor))];
      if (us !== null) shown.push(showUs(stored, kind, digits(us.factor)));
      for (const text of shown) {
        assertEquals(
          judge(one, text).state,
          "right",
          `${one.id}: ${text}: ${judge(one, text).message}`,
        );
      }
    }
  }
});

Deno.test("no exercise takes an answer that is off by a prefix of its unit or by hours for seconds", () => {
  // Property: powers of a thousand, 3600 and their reciprocals are never right
  for (const one of EXERCISES) {
    if (one.kind === "choice") continue;
    const { si } = KINDS[one.kind];
    for (const factor of [1e3, 1e6, 1e9, 3600, 3.6e6]) {
      for (const wrong of [Number(one.answer) * factor, Number(one.answer) / factor]) {
        assertEquals(judge(one, `${wrong} ${si}`).state, "wrong", `${one.id}: ${wrong} ${si}`);
      }
    }
  }
});

Deno.test("the example in each question is of the kind that is asked, and is not the answer", () => {
  // Property: what the question tells people to type can be read
  for (const one of EXERCISES as readonly Exercise[]) {
    if (one.kind === "choice") continue;
    const example = /such as "([^"]+)"/.exec(one.question)?.[1];
    if (example === undefined) continue;
    parseQuantity(example, one.kind);
    assertEquals(judge(one, example).state, "wrong", `${one.id}: ${example}`);
  }
});
