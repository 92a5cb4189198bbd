import { assert, assertEquals } from "@std/assert";
import { EXERCISES } from "../../lib/show/exercises.ts";
import { type Exercise, judge, typicalSlips, type UsualSlip } from "../../lib/show/kit/exercise.ts";
import {
  displayUnit,
  type Kind,
  KINDS,
  parseQuantity,
  showSi,
  showUs,
} from "../../lib/units/mod.ts";

/** A value as people type it, in the units that its kind is shown in, six figures. */
function typedForms(kind: Kind, value: number): string[] {
  const [shown, stored] = kind === "time" ? ["days" as const, value / 86400] : [kind, value];
  const { si, us } = displayUnit(shown as Kind);
  const digits = (factor: number) =>
    Math.max(0, 5 - Math.floor(Math.log10(Math.abs(stored * factor || 1))));
  const forms = [showSi(stored, shown as Kind, digits(si.factor))];
  if (us !== null) forms.push(showUs(stored, shown as Kind, digits(us.factor)));
  return forms;
}

/** A wrong choice with a reason that its slip is about: the first word its pattern takes. */
function typedChoice({ value, because }: UsualSlip): string {
  if (because === undefined) return String(value);
  const word = because.source.split("|")[0]!.replaceAll(/\\b|\?/g, "").replaceAll("\\.", ".");
  return `${value}, ${word}`;
}

for (const one of EXERCISES) {
  Deno.test(`exercise ${one.id}: ten slips and more, each with a hint of its own`, () => {
    // Property: SI and US, no two slips are one value, none is the answer
    const slips = typicalSlips(one);
    assert(slips.length >= 10, `only ${slips.length}`);
    for (const slip of slips) {
      const forms = one.kind === "choice"
        ? [typedChoice(slip)]
        : typedForms(one.kind, Number(slip.value));
      for (const form of forms) {
        assertEquals(judge(one, form), { state: "wrong", message: slip.hint }, form);
      }
    }
    assertEquals(new Set(slips.map(({ hint }) => hint)).size, slips.length, "a hint stands twice");
    if (one.kind === "choice") return;
    const values = [Number(one.answer), ...slips.map(({ value }) => Number(value))];
    values.forEach((value, k) =>
      values.slice(0, k).forEach((other) => {
        const room = one.tolerance * (Math.abs(value) + Math.abs(other));
        assert(Math.abs(value - other) > room, `${value} and ${other} are told apart by chance`);
      })
    );
  });

  Deno.test(`exercise ${one.id}: no hint holds the answer`, () => {
    // Property: neither as a number, with or without its unit, nor as the word
    const hints = typicalSlips(one).map(({ hint }) => hint);
    for (const hint of hints) {
      const found = one.kind === "choice"
        ? [...hint.toLowerCase().matchAll(/\p{L}+/gu)].some(([word]) => word === one.answer)
        : givesAway(one, hint);
      assert(!found, hint);
    }
  });
}

/** True where a number of the text is taken as the answer, in its own unit or in any the workbook shows. */
function givesAway(one: Exercise, text: string): boolean {
  const kind = one.kind as Kind;
  const { si, us } = displayUnit(kind === "time" ? "days" : kind);
  const units = ["", KINDS[kind].si, si.unit, us?.unit ?? "", "%", "d", "W", "kWh", "MJ"];
  return (text.replaceAll(/(\d)[ \u202f](?=\d{3})/g, "$1").match(/[-−]?\d+(?:\.\d+)?/g) ?? [])
    .some((number) =>
      units.some((unit) =>
        judge({ ...one, tolerance: 0.005 }, `${number} ${unit}`).state === "right"
      )
    );
}

Deno.test("givesAway() finds the answer in a hint, in both systems", () => {
  // Property: the check above can fail
  const depth = EXERCISES.find(({ id }) => id === "soil.penetration")!;
  assert(givesAway(depth, "It is 2.24 m, is it not?"));
  assert(givesAway(depth, "It is 7.35 ft."));
  assert(!givesAway(depth, "It is 1.2 m."));
});

Deno.test("a choice is read before its reason, and right stays right with one", () => {
  // Property: words behind the comma decide on the hint, never on right or wrong
  const tubes = EXERCISES.find(({ id }) => id === "headers.starving")!;
  const told = (given: string) => judge(tubes, given);
  assertEquals(told("near, because static pressure is regained").state, "right");
  assertEquals(told("near, not far").state, "unreadable");
  assert(told("far, as friction eats the pressure").message.includes("nothing rubs"));
  assert(told("far because the way is long").message.includes("long way"));
  assertEquals(told("far").message, tubes.slips[0]!.hint);
  assertEquals(told("far, I guess").message, tubes.slips[0]!.hint);
  assert(told("left").message.includes("far, near"));
  assert(!told("left").message.includes("middle"));
  assert(judge(tubes, null).message.includes("behind a comma"));
});

Deno.test("every exercise takes its answer in each unit that any table shows its kind of quantity in", () => {
  // Property: all units shown anywhere that can stand behind the answer, not only those of its own kind
  const shown = (Object.keys(KINDS) as Kind[]).flatMap((kind) => {
    const { si, us } = displayUnit(kind);
    return us === null ? [si.unit] : [si.unit, us.unit];
  });
  for (const one of EXERCISES) {
    if (one.kind === "choice") continue;
    const units = [...new Set(shown)].filter((unit) => sizeOf(one.kind as Kind, unit) > 0);
    assert(units.length >= 1 || one.kind === "number", one.id);
    for (const unit of units) {
      const size = sizeOf(one.kind, unit);
      const turned = sizeOf(one.kind, unit, 2) < size; // a resistance for a transmittance
      const value = turned ? size / Number(one.answer) : Number(one.answer) / size;
      const given = `${Number(value.toPrecision(6))} ${unit}`;
      assertEquals(judge(one, given).state, "right", `${one.id}: ${given}`);
    }
  }
});

/** So much of a unit in the inside one of the kind, or 0 where it is none of its units. */
function sizeOf(kind: Kind, unit: string, amount = 1): number {
  try {
    return parseQuantity(`${amount} ${unit}`, kind);
  } catch {
    return 0;
  }
}
