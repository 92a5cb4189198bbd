// What a study file may hold that it must not, long because each fault is a case of its own.
import { assert, assertEquals, assertRejects } from "@std/assert";
import fc from "fast-check";
import { InputError, InputErrors } from "winterground/basics/mod.ts";
import { checkStudyText } from "winterground/study/file/check_study.ts";
import { openStudy } from "winterground/study/file/open.ts";

const GOOD = `place:
  name: Somewhere
  latitude: 45 deg
  longitude: 9 deg
  elevation: 200 m
  timeZone: UTC+1
climate:
  normals: normals.csv
house:
  length: 20 m
  width: 8 m
`;

/** Messages for a study text, one a fault. */
function faults(text: string): string[] {
  try {
    checkStudyText(text, "bad.yaml");
  } catch (error) {
    assert(error instanceof InputErrors, String(error));
    return error.faults.map((fault) => fault.message);
  }
  return [];
}

function changed(from: string, to: string): string {
  assert(GOOD.includes(from));
  return GOOD.replace(from, to);
}

Deno.test("a good study has no faults", () => {
  // Property: the base of the cases below is itself accepted
  assertEquals(faults(GOOD), []);
});

Deno.test("a negative length is refused with its line", () => {
  // Property: limits hold, in the unit the user wrote
  assertEquals(faults(changed("length: 20 m", "length: -20 m")), [
    'bad.yaml:10:11: "house.length" must lie between 1 m and 1000 m; found -20 m',
  ]);
});

Deno.test("an unknown key is refused with the nearest known one", () => {
  // Property: misspelled keys never pass silently
  assertEquals(faults(`${GOOD}  leakge: 0.5 1/h\n`), [
    'bad.yaml:12:3: Unknown key "leakge" in "house": did you mean "leakage"?',
  ]);
  assertEquals(faults(`${GOOD}tube:\n  count: 3\n`), [
    'bad.yaml:12:1: Unknown key "tube" in the study file: did you mean "tubes"?',
  ]);
  assertEquals(faults(`${GOOD}  texture: clay\n`), [
    'bad.yaml:12:3: Unknown key "texture" in "house": the key "texture" belongs in "soil"',
  ]);
});

Deno.test("a unit of the wrong kind and a missing unit are refused with their line", () => {
  // Property: a mass is no length
  assertEquals(faults(changed("length: 20 m", "length: 26 kg")), [
    'bad.yaml:10:11: Cannot use "house.length": expected a length such as 26 m or 85 ft; found 26 kg',
  ]);
  assertEquals(faults(changed("length: 20 m", "length: 26")), [
    'bad.yaml:10:11: Cannot use "house.length": expected a length such as 26 m or 85 ft; ' +
    "found 26 without a unit",
  ]);
});

Deno.test("a missing key and a missing section are told", () => {
  // Property: place, climate and house size have no default
  const [message] = faults(changed("  length: 20 m\n", ""));
  assert(message!.startsWith('bad.yaml:10:3: "house.length" is missing'), message);
  assert(
    faults(GOOD.replace(/place:[\s\S]*UTC\+1\n/, ""))[0]!.includes('section "place" is missing'),
  );
  assert(faults(GOOD.replace(/house:[\s\S]*/, ""))[0]!.includes('section "house" is missing'));
  assert(faults(changed("  normals: normals.csv\n", "")).length > 0);
});

Deno.test("all faults are told at once, in the order of the file", () => {
  // Property: one pass shows everything
  const text = GOOD.replace("45 deg", "200 deg").replace("20 m", "long").replace("8 m", "-8 m");
  const lines = faults(text).map((message) => Number(message.split(":")[1]));
  assertEquals(lines, [3, 10, 11]);
});

Deno.test("a wrong word lists the right ones", () => {
  // Property: catalogues and choices answer with what there is
  assert(faults(`${GOOD}  shape: dome\n`)[0]!.includes("gable, hoop, lean-to"));
  assert(faults(`${GOOD}  glazing: paper\n`)[0]!.includes("twin-wall-8mm"));
  assert(faults(`${GOOD}tubes:\n  tube: hose\n`)[0]!.includes("corrugated-4in"));
  assert(faults(`${GOOD}fan:\n  fan: hurricane\n`)[0]!.includes("duct-315"));
});

Deno.test("broken YAML, doubled keys and wrong shapes name the line", () => {
  // Property: every fault is an InputErrors with a location
  for (
    const text of [
      "house: [1,\n",
      `${GOOD}  length: 3 m\n`,
      "- one\n- two\n",
      "just words\n",
      `${GOOD}tubes: 12\n`,
      "\thouse:\n",
    ]
  ) {
    const found = faults(text);
    assert(found.length > 0, text);
    for (const message of found) assert(/^bad\.yaml:\d+/.test(message), message);
  }
});

Deno.test("no text at all makes the study reader fail in any other way", () => {
  // Property: any value in any place gives faults or a study, never another error
  const value = fc.oneof(
    fc.string(),
    fc.double({ noNaN: true }),
    fc.boolean(),
    fc.constant(null),
    fc.array(fc.integer()),
    fc.constantFrom("1 m", "-4 degF", "1e400 m", "none", "glazed", "NaN", "Infinity m", "{}"),
  );
  const section = fc.dictionary(
    fc.constantFrom("length", "width", "curtain", "texture", "count", "name", "airFlow", "x"),
    value,
  );
  const study = fc.dictionary(
    fc.constantFrom("place", "climate", "house", "soil", "tubes", "headers", "fan", "store", "y"),
    fc.oneof(section, value),
  );
  fc.assert(fc.property(study, (data) => void faults(JSON.stringify(data))), {
    numRuns: 300,
    seed: 1,
  });
});

Deno.test("files that cannot be read are told in plain words", async () => {
  // Property: missing, empty, a folder, not UTF-8: InputError with the file, nothing else
  const folder = await Deno.makeTempDir();
  try {
    const write = async (name: string, content: Uint8Array | string) => {
      const path = `${folder}/${name}`;
      if (typeof content === "string") await Deno.writeTextFile(path, content);
      else await Deno.writeFile(path, content);
      return path;
    };
    const cases: [string, string][] = [
      [`${folder}/none.yaml`, "there is no such file"],
      [folder, "it is a folder"],
      [await write("empty.yaml", ""), "it is empty"],
      [await write("blank.yaml", "\n  \n"), "it is empty"],
      [await write("latin.yaml", new Uint8Array([97, 58, 10, 98, 58, 32, 0xe9, 10])), ":2: Cannot"],
      [await write("good.yaml", GOOD), "good.yaml:8:12: Cannot find the file"],
    ];
    for (const [path, words] of cases) {
      const error = await assertRejects(() => openStudy(path), InputError);
      assert(error.message.includes(words), error.message);
      assert(error.message.includes(folder), error.message);
    }
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("inputs that contradict each other are refused", () => {
  // Property: hysteresis and geometry the wrong way round never reach a chapter
  return assertRejects(async () => {
    const path = await Deno.makeTempFile({ suffix: ".yaml" });
    try {
      await Deno.writeTextFile(
        path,
        `${GOOD}  ridgeHeight: 1 m\nstore:\n  chargeStart: 2 K\n  chargeStop: 4 K\n`,
      );
      await openStudy(path);
    } finally {
      await Deno.remove(path);
    }
  }, InputErrors).then((error) => {
    const words = ['"house.ridgeHeight"', '"store.chargeStop"', '"climate.normals"'];
    assertEquals((error as InputErrors).faults.length, words.length, error.message);
    for (const word of words) assert(error.message.includes(word), error.message);
  });
});

Deno.test("a climate section names one source", async () => {
  // Property: none and two are refused with the line
  for (
    const [from, to] of [["normals: normals.csv", "seed: 3"], [
      "normals: normals.csv",
      "normals: normals.csv\n  file: year.csv",
    ]]
  ) {
    const path = await Deno.makeTempFile({ suffix: ".yaml" });
    try {
      await Deno.writeTextFile(path, changed(from!, to!));
      const error = await assertRejects(() => openStudy(path), InputErrors);
      assert(/\.yaml:\d+:\d+: /.test(error.message), error.message);
    } finally {
      await Deno.remove(path);
    }
  }
});

const NORMALS = new URL("../../data/climates/aldersett_normals.csv", import.meta.url).pathname;

/** The message with which a whole study is refused. */
async function refusal(text: string): Promise<string> {
  const path = await Deno.makeTempFile({ suffix: ".yaml" });
  try {
    await Deno.writeTextFile(path, text.replace("normals: normals.csv", `normals: ${NORMALS}`));
    const error = await assertRejects(() => openStudy(path), InputErrors);
    return error.message.replaceAll(path, "bad.yaml");
  } finally {
    await Deno.remove(path);
  }
}

Deno.test("what cannot be built is refused with its line, before anything is computed", async () => {
  // Property: the size of the tube against spacing, layers, floor, house and header
  const cases: readonly (readonly [section: string, message: string])[] = [
    ["tubes:\n  spacing: 6 cm\n", '13:12: "tubes.spacing" makes the tubes overlap'],
    ["tubes:\n  layerSpacing: 6 cm\n", '13:17: "tubes.layerSpacing" makes the layers overlap'],
    [
      "tubes:\n  tube: corrugated-10in\n  depth: 10 cm\n",
      '14:10: "tubes.depth" leaves less than 20\u00a0mm (0.8\u00a0in) of soil',
    ],
    [
      "tubes:\n  layers: 2\n  spacing: 40 cm\n  count: 400\n",
      "15:10: Cannot compute a field of tubes 79.6\u00a0m (261.2\u00a0ft) wide",
    ],
    ["tubes:\n  airFlow: 60 m3/s\n  count: 40\n", '13:12: "tubes.airFlow" gives'],
    [
      "tubes:\n  airFlow: 80 m3/s\n  count: 80\n  tube: smooth-200mm\n  layers: 4\n  depth: 1 m\n",
      '13:12: "tubes.airFlow" changes the air of the house 609 times an hour',
    ],
    [
      "headers:\n  diameter: 3 in\n",
      "13:13: Cannot put tubes of 118\u00a0mm (4.6\u00a0in) outside diameter into a header",
    ],
  ];
  for (const [section, message] of cases) {
    assertEquals((await refusal(GOOD + section)).slice(9).slice(0, message.length), message);
  }
});

Deno.test("broken YAML is told once and in plain words", async () => {
  // Property: one message a cause, none in the words of the parser's programmer
  assertEquals(faults(GOOD.replace("  length", "\tlength")), [
    "bad.yaml:10:1: Cannot read the YAML: the line starts with a tab; indent with spaces",
  ]);
  assertEquals(faults(`${GOOD}  length: 3 m\n`), [
    'bad.yaml:12:3: The key "length" appears twice in the same section: keep one',
  ]);
  assert(faults(`${GOOD}---\nplace: x\n`)[0]!.includes("a second document starts here"));
  const many = ["a: &a [x, x, x, x, x, x, x, x, x, x]"];
  for (const [name, from] of ["ba", "cb", "dc", "ed"]) {
    many.push(`${name}: &${name} [${Array(10).fill(`*${from}`).join(", ")}]`);
  }
  for (const text of [changed("20 m", "*nowhere"), many.join("\n")]) {
    const message = await refusal(text);
    assert(/^bad\.yaml:1: Cannot read the YAML: .*alias/i.test(message), message);
  }
});

Deno.test("levels, aliases and entries of lists have limits that are told with their line", async () => {
  // Property: what docs/study-file.md states as the limits
  const nested = (levels: number) => `${"[".repeat(levels)}${"]".repeat(levels)}`;
  for (const levels of [101, 100_000]) {
    const message = await refusal(`${GOOD}  shape: ${nested(levels)}\n`);
    assert(/^bad\.yaml:12:110: Cannot read the YAML: it nests too deep/.test(message), message);
  }
  assert((await refusal(`${GOOD}  shape: ${nested(100)}\n`)).includes("found a list"));
  const aliases = (count: number) => `x: &x none\ny: [${Array(count).fill("*x").join(", ")}]\n`;
  assert((await refusal(GOOD + aliases(100))).includes('Unknown key "x"'));
  assert(/bad\.yaml:1: .*alias/i.test(await refusal(GOOD + aliases(101))));
  const corners = (count: number) =>
    changed(
      "  timeZone: UTC+1\n",
      `  timeZone: UTC+1\n  horizon:\n${
        Array.from(
          { length: count },
          (_, k) => `    - {azimuth: ${k * 0.9} deg, elevation: 5 deg}\n`,
        )
          .join("")
      }`,
    );
  assertEquals(faults(corners(360)), []);
  assertEquals(faults(corners(361)), [
    'bad.yaml:8:5: Cannot use "place.horizon": expected at most 360 entries; leave out those that ' +
    "change little",
  ]);
});

Deno.test("a flat board without its depth, or a depth without a board, and what the mesh does not hold is refused with its line", async () => {
  // Property: nothing that is given is ignored
  const cases = [
    ["flatBoardResistance: 2 m2 K/W", '13:24: "store.flatBoardResistance" is given without'],
    ["meshDepth: 30 m\ntubes:\n  depth: 16 m", "15:10: The middle of the layers of tubes"],
    [
      "collector: {area: 4 m2, holeDiameter: 0.8 mm, pitch: 40 mm}",
      '13:56: "store.collector.pitch" must be 2 to 40 times',
    ],
    ["flatBoardDepth: 1.5 m", '13:19: "store.flatBoardDepth" is given without'],
    [
      "meshDepth: 12 m\n  flatBoardResistance: 2 m2 K/W\n  flatBoardDepth: 11.8 m",
      '15:19: "store.meshDepth" must',
    ],
  ] as const;
  for (const [text, start] of cases) {
    const message = await refusal(`${GOOD}store:\n  ${text}\n`);
    assertEquals(message.slice(9, 9 + start.length), start, message);
  }
  const insulation = "  edgeInsulation: 2 m2 K/W\n  edgeInsulationDepth: 4 m\n";
  const message = await refusal(`${GOOD}${insulation}store:\n  meshDepth: 4 m\n`);
  assert(
    message.startsWith('bad.yaml:15:14: "store.meshDepth" must reach at least 0.5 m'),
    message,
  );
});

Deno.test("thousands of unknown keys are told in a screenful, a repeated one among them by its line", () => {
  // Property: the size of a bad file decides neither the time nor the length of the message
  const many = Array.from({ length: 20_000 }, (_, k) => `unknown${k}: 3\n`).join("");
  const messages = faults(GOOD + many);
  assertEquals(messages.length, 51);
  assertEquals(messages.at(-1), "bad.yaml:62:1: 19950 more unknown keys in the study file");
  assertEquals(faults(`${GOOD}${many}unknown7: 4\n`), [
    'bad.yaml:20012:1: The key "unknown7" appears twice in the same section: keep one',
  ]);
});
