// A list of what people type, long because every exercise has its own.
import { assert, assertEquals } from "@std/assert";
import { EXERCISES } from "../../lib/show/exercises.ts";
import { type Exercise, judge } from "../../lib/show/kit/exercise.ts";
import {
  displayUnit,
  type Kind,
  KINDS,
  parseQuantity,
  showSi,
  showUs,
} from "../../lib/units/mod.ts";

/** What people type: accepted, and wrong with the slip whose hint fits, or a part of what they are told. */
interface Typed {
  readonly right: readonly (string | number)[];
  readonly wrong: readonly (readonly [answer: string | number, hint: RegExp | number])[];
}

const UNIT = /expected/;
const SIGN = /sign/;

/**
 * Forms worked out by hand beside the exercises: SI and US units by NIST SP 811 (2008) appendix B.8,
 * 1 kWh = 3.6 MJ = 3.412142 kBtu, 1 W = 3.412142 Btu/h, 1 W/K = 1.895634 Btu/(h degF),
 * 1 W/(m² K) = 0.1761102 Btu/(h ft² degF), 1 inH2O = 249.0889 Pa, 1 ft = 0.3048 m.
 */
const TYPED: Readonly<Record<string, Typed>> = {
  "climate.noonSun": {
    right: ["16.56 deg", "16.6°", "16.5 degrees", "0.289 rad", "about 16.6 deg", "~16.6°"],
    wrong: [
      ["63.44 deg", 0],
      ["40 degrees", 1],
      ["26.56°", 2],
      ["-16.56 deg", SIGN],
      [16.56, UNIT],
      ["16.56 m", UNIT],
    ],
  },
  "climate.degreeDays": {
    right: [
      "266 K d",
      "266 K·d",
      "266 Kd",
      266,
      "266",
      "266 degC d",
      "266 °C d",
      "479 degF d",
      "6384 K h",
    ],
    wrong: [
      ["14 K d", 0],
      [38, 1],
      ["479 K d", 2],
      ["140 K d", 3],
      ["-266 K d", SIGN],
      ["266 K", UNIT],
      ["266 d", UNIT],
    ],
  },
  "climate.incidence": {
    right: ["17 deg", "17°", "17 degrees", "0.297 rad"],
    wrong: [["73 deg", 0], ["90°", 1], ["17 %", UNIT]],
  },
  "fan.twoFans": {
    right: ["less", "Less", '"less"', "less."],
    wrong: [["twice", 0], ["More", 1], ["half", /less, more, twice/]],
  },
  "fan.halfSpeed": {
    right: ["15 W", "15W", "15 watts", "0.015 kW", "51.2 Btu/h", "0.0512 kBtu/h", "15.0 W."],
    wrong: [["60 W", 0], ["30 W", 1], ["15 kW", /units/], [15, UNIT], [
      "15 J",
      UNIT,
    ]],
  },
  "fan.density": {
    right: [
      "75 Pa",
      "0.075 kPa",
      "0.75 hPa",
      "0.75 mbar",
      "0.301 in wg",
      "0.301 inH2O",
      "0.301 inches of water",
    ],
    wrong: [["133.3 Pa", 0], ["100 Pa", 1], ["56.25 Pa", 2]],
  },
  "headers.areaRatio": {
    right: ["2.58", 2.58, "2.6", "= 2.58"],
    wrong: [["6.43", 0], [0.388, 1], ["0.161", 2], [
      "2.58 m2",
      UNIT,
    ]],
  },
  "headers.strength": {
    right: ["70 %", "70.2%", "0.70", 0.702, "70 percent", "70 per cent"],
    wrong: [["30 %", 0], ["0.404", 1], ["70 mm", UNIT], [
      70,
      /units/,
    ]],
  },
  "headers.starving": {
    right: ["near", "Near", '"near"', "those near the feed", "the near ones"],
    wrong: [["far", 0], ["the far ones", 0], ["not near", /far, near/], [
      "near and far",
      /far, near/,
    ]],
  },
  "house.loss": {
    right: [
      "2266 W/K",
      "2.27 kW/K",
      "2270 W/°C",
      "4296 Btu/(h degF)",
      "4300 Btu/h/°F",
      "4300 Btu/(hr °F)",
      "4.3 kBtu/(h degF)",
    ],
    wrong: [["1944 W/K", 0], ["322 W/K", 1], ["1162000 W/K", 2], ["2266 W", UNIT]],
  },
  "house.night": {
    right: [
      "476 kWh",
      "476 kW h",
      "1713 MJ",
      "1.713 GJ",
      "1624 kBtu",
      "1.624 MMBtu",
      "16.24 therm",
      "476000 Wh",
    ],
    wrong: [["34 kWh", 0], ["475900 kWh", 1], ["31.7 kWh", 2], [
      "476 kW",
      UNIT,
    ]],
  },
  "house.curtain": {
    right: [
      "1.71 W/(m2 K)",
      "1.71 W/m2K",
      "1.71 W/m²/K",
      "0.301 Btu/(h ft2 degF)",
      "0.30 Btu/(h ft² °F)",
      "0.3 Btu/hr/ft2/F",
      "R-3.32",
    ],
    wrong: [
      ["1.53 W/(m2 K)", 0],
      ["2.97 W/(m2 K)", 2],
      ["1.71 W/K", UNIT],
    ],
  },
  "house.drip": {
    right: ["yes", "Yes", "yes.", "yes, it drips"],
    wrong: [["no", 0], ["No!", 0], ["perhaps", /no, yes/]],
  },
  "house.first": {
    right: ["sealing", "Sealing", "the sealing"],
    wrong: [["curtain", 0], ["both", /curtain, sealing/]],
  },
  "soil.penetration": {
    right: ["2.24 m", "224 cm", "2240 mm", "7.35 ft", "88 in", "7' 4\"", "7 1/3 ft", '88"'],
    wrong: [["0.117 m", 0], ["3.97 m", 1], ["5.02 m", 2], [
      "-2.24 m",
      SIGN,
    ], [2.24, UNIT]],
  },
  "soil.lag": {
    right: ["26 d", "26 days", "25.9 days", "3.7 weeks", "623 h", "623 hours", "2.24e6 s"],
    wrong: [["163 d", 0], ["81.5 days", 1], [
      "26 h",
      /Far off|Too small/,
    ], [26, UNIT]],
  },
  "soil.freezing": {
    right: ["83.5 MJ", "83500 kJ", "8.35e7 J", "23.2 kWh", "79.1 kBtu", "0.791 therm", "0.0835 GJ"],
    wrong: [
      ["334 MJ", 0],
      ["83.5 kJ", 1],
      ["1.045 MJ", 2],
      ["83500 MJ", /units/],
      ["83.5e6 kWh", /units/],
      ["83,5 MJ", /point/],
      ["83.5 MW", UNIT],
    ],
  },
  "store.latentShare": {
    right: ["61 %", "0.606", "60.6 percent"],
    wrong: [["39.4 %", 0], ["1.54", 1], ["61 kJ", UNIT]],
  },
  "store.cop": {
    right: ["12", 12, "12.0", "12 kWh", "12 kWh/kWh"],
    wrong: [["32", 0], [20, 1], ["0.6", 2], ["60 %", UNIT]],
  },
  "store.gross": {
    right: [
      "3500 kWh",
      "3.5 MWh",
      "12.6 GJ",
      "12600 MJ",
      "11942 kBtu",
      "119.4 therm",
      "3\u202f500 kWh",
    ],
    wrong: [
      ["9000 kWh", 0],
      ["2600 kWh", 1],
      ["8000 kWh", 2],
      ["3500 MWh", /units/],
      ["3500 MJ", /Too small|units/],
      ["1.26e10 kWh", /units/],
      ["3 500 kWh", /without spaces/],
    ],
  },
  "store.season": {
    right: ["6.25 %", "0.0625", "6.3 %"],
    wrong: [
      ["57.5 %", 0],
      ["42.5 %", 1],
      ["12.8 %", 2],
      [6.25, /units/],
    ],
  },
  "store.spell": {
    right: ["same", "Same", "the same", '"same"'],
    wrong: [["smaller", 0], ["none", 1], ["larger", /none, same, smaller/]],
  },
  "tubes.pressure": {
    right: ["100 Pa", "100.2 Pa", "0.1 kPa", "1 mbar", "0.402 in wg", "0.402 inH2O"],
    wrong: [["200.4 Pa", 0], ["92.1 Pa", 1], ["31.1 Pa", 2], ["376.6 Pa", 2]],
  },
  "tubes.effectiveness": {
    right: ["77 %", "76.8 %", "0.77", 0.768],
    wrong: [["1.46", 0], ["23.2 %", 1], [77, /units/]],
  },
  "tubes.count": {
    right: ["82", 82, "81.6", "82 tubes", "81"],
    wrong: [["163", 0], [20.4, 1], ["16.3", 2], ["82 m", UNIT]],
  },
};

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
