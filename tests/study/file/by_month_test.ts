import { assert, assertEquals, assertThrows } from "@std/assert";
import { checkStudyText } from "winterground/study/file/check_study.ts";
import { deriveDefaults } from "winterground/study/file/derive.ts";
import { unusualValues } from "winterground/study/file/plausibility.ts";

const study = (house: string) => `
place: {name: Somewhere, latitude: 45 deg, longitude: 9 deg, elevation: 200 m, timeZone: UTC+1}
climate: {normals: normals.csv}
house: {length: 20 m, width: 8 m${house}}
`;
const leafArea = (text: string) =>
  deriveDefaults(checkStudyText(study(`, leafArea: ${text}`), "months.yaml")).inputs.house.leafArea;

Deno.test("a value by month is one number, a list of twelve, or numbers by the name of the month", () => {
  // Property: all ways of writing; a month not named keeps the one before it, through the year's end
  assertEquals(leafArea("1.5"), 1.5);
  assertEquals(leafArea("[1, 1, 2, 2, 2, 2, 2, 1, 1, 1, 1, 0.5]"), [
    1,
    1,
    2,
    2,
    2,
    2,
    2,
    1,
    1,
    1,
    1,
    0.5,
  ]);
  assertEquals(leafArea("{Oct: 2, january: 1, MAR: 3}"), [1, 1, 3, 3, 3, 3, 3, 3, 3, 2, 2, 2]);
  assertEquals(leafArea("{May: 2}"), new Array(12).fill(2));
});

Deno.test("a value by month that cannot be read is refused with what was found and expected", () => {
  // Property: one fault, one message that names it
  const refused: [string, string][] = [
    [
      "[1, 2, 3]",
      "a list of twelve from January, or values by month such as {Oct: 2}; found a list of 3",
    ],
    ["{Oct: 2, Octember: 1}", 'no month "Octember": expected Jan, Feb'],
    ["{Oct: 2, october: 1}", "gives October twice"],
    ["{Oct: 9}", "must lie between 0 and 8; found 9"],
    ["{}", "names no month"],
    ["[1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, many]", "many"],
  ];
  for (const [text, message] of refused) assertThrows(() => leafArea(text), Error, message);
});

Deno.test("leaf area that is not given follows the crop's months, and is listed as a default", () => {
  // Property: definition; unusual months are named like unusual values
  const given = checkStudyText(study(", crop: tomato"), "months.yaml");
  const { inputs, taken } = deriveDefaults(given);
  assert(Array.isArray(inputs.house.leafArea));
  const line = taken.find(({ key }) => key === "house.leafArea");
  assert(/^Jan: 0, Mar: 0.2, Apr: /.test(line!.value), line!.value);
  const odd = {
    ...given,
    ...inputs,
    house: { ...inputs.house, leafArea: [...new Array(11).fill(1), 7] },
  };
  const notices = unusualValues(odd as unknown as Parameters<typeof unusualValues>[0]);
  assert(notices.some(({ text }) => /house.leafArea is 7/.test(text)));
});
