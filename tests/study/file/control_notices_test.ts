import { assert, assertEquals } from "@std/assert";
import { checkStudyText } from "winterground/study/file/check_study.ts";
import { controlNotices } from "winterground/study/file/control_notices.ts";
import { deriveDefaults } from "winterground/study/file/derive.ts";
import { parseYaml } from "winterground/study/file/yaml_source.ts";

const HEAD =
  `place: {name: Somewhere, latitude: 49 deg, longitude: -100 deg, elevation: 500 m, timeZone: UTC-6}
climate: {normals: normals.csv}
`;

/** Notices of a study whose house and store have the given lines. */
function noticesOf(house: string, store: string): readonly string[] {
  const text = `${HEAD}house:\n  length: 20 m\n  width: 8 m\n${house}store:\n${store}`;
  const { inputs } = deriveDefaults(checkStudyText(text, "folder/my.yaml"));
  return controlNotices(inputs, parseYaml(text, "folder/my.yaml")).map((found) => found.text);
}

/** Controls that contradict each other: lines of the house and of the store, line, words. */
const CONTRADICTIONS: readonly (readonly [string, string, number, RegExp])[] = [
  ["", "  fanSeason: never\n", 7, /does not run/],
  ["", "  chargeAbove: 18 degC\n  chargeSeason: never\n", 8, /nothing is charged/],
  [
    "",
    "  fanSeason: 1 Nov to 31 Mar\n  chargeSeason: 1 Apr to 31 Oct\n",
    8,
    /no day in common/,
  ],
  ["", "  maximumStore: 15 degC\n", 7, /below "store.chargeAbove"/],
  [
    "  heatSetPoint: 16 degC\n",
    "  dischargeBelow: 17 degC\n  maximumStore: 18.5 degC\n",
    9,
    /heated house nothing/,
  ],
  [
    "  ventSetPoint: 12 degC\n",
    "  dischargeBelow: 13 degC\n  chargeAbove: 14 degC\n",
    8,
    /let out what the store gives/,
  ],
  ["  heatSetPoint: 9 degC\n", "  dischargeBelow: 8 degC\n", 8, /heater comes first/],
  [
    "  curtain:\n    coverage: 80 %\n    closeBelowInside: 3 degC\n  heatSetPoint: 5 degC\n",
    "  slices: 8\n",
    8,
    /never gets cold enough/,
  ],
  [
    "  curtain:\n    closeBelow: 30 W/m2\n    dullDays: limits\n    dullBelow: 30 W/m2\n",
    "  slices: 8\n",
    9,
    /keeps it shut no longer/,
  ],
  ["  ventSetPoint: 14 degC\n", "  chargeAbove: 18 degC\n", 8, /before the store is charged/],
];

for (const [house, store, line, words] of CONTRADICTIONS) {
  Deno.test(`controlNotices() names the line where ${words.source}`, () => {
    // Property: said once, with file and line, not the folder
    const found = noticesOf(house, store).filter((text) => words.test(text));
    assertEquals(found.length, 1, noticesOf(house, store).join("\n"));
    assert(found[0]!.startsWith(`my.yaml:${line}: `), found[0]);
  });
}

Deno.test("controlNotices() leaves sound controls alone", () => {
  // Property: none for the defaults, nor for a usual season and limit
  assertEquals(noticesOf("", "  slices: 8\n"), []);
  const usual = "  fanSeason: 1 Aug to 31 May\n  chargeSeason: 15 Aug to 30 Apr\n" +
    "  maximumStore: 28 degC\n  chargeBelowGround: 14 degC\n";
  assertEquals(noticesOf("", usual), []);
});
