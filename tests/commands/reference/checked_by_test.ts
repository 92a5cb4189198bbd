import { assertEquals } from "@std/assert";
import { checkedBy, definingFile } from "winterground/commands/reference/checked_by.ts";

const RESOLVER = {
  library: new Map([
    [
      "lib/fan/laws.ts",
      "export function atSpeed(): number {\n  return 1;\n}\nexport const LIMIT = 2;\n",
    ],
    ["lib/fan/mod.ts", 'export { atSpeed as scaled, LIMIT } from "./laws.ts";\n'],
    ["lib/show/fan/mod.ts", 'export * from "../../fan/mod.ts";\n'],
    ["lib/store/answer.ts", "export async function answer() {}\n"],
    ["lib/house/answer.ts", "export function answer() {}\n"],
  ]),
  names: new Map([["winterground/fan", "lib/show/fan/mod.ts"], ["winterground/", "lib/"]]),
};

Deno.test("definingFile() follows exports, new names and stars to the definition", () => {
  // Property: each way through the modules leads to one file
  assertEquals(definingFile("lib/fan/laws.ts", "atSpeed", RESOLVER), "lib/fan/laws.ts");
  assertEquals(definingFile("lib/fan/mod.ts", "scaled", RESOLVER), "lib/fan/laws.ts");
  assertEquals(definingFile("lib/show/fan/mod.ts", "LIMIT", RESOLVER), "lib/fan/laws.ts");
  assertEquals(definingFile("lib/fan/mod.ts", "atSpeed", RESOLVER), undefined);
});

Deno.test("checkedBy() keeps functions of one name apart and sees which tests hold published values", () => {
  // Property: an import alone, or a comment naming a source in another test, is no check
  const store = {
    path: "tests/store/answer_test.ts",
    text: 'import { answer } from "winterground/store/answer.ts";\n' +
      'import { answer as houseAnswer } from "../../lib/house/answer.ts";\n' +
      'Deno.test("a", () => {\n  // Source: a table\n  answer();\n});\n' +
      'Deno.test("b", () => {\n  // Property: same\n  houseAnswer();\n});\n',
  };
  const idle = {
    path: "tests/store/idle_test.ts",
    text: 'import { answer } from "winterground/store/answer.ts";\nDeno.test("c", () => {});\n',
  };
  const checks = checkedBy([store, idle], RESOLVER);
  assertEquals(checks.get("lib/store/answer.ts#answer"), [{ path: store.path, published: true }]);
  assertEquals(checks.get("lib/house/answer.ts#answer"), [{ path: store.path, published: false }]);
});

Deno.test("checkedBy() counts a whole file of published values, and names used through a namespace", () => {
  // Property: the first line of a file speaks for all its tests
  const file = {
    path: "tests/outside/fan_test.ts",
    text: '// Source: a handbook\nimport * as fan from "winterground/fan";\n' +
      'Deno.test("a", () => {\n  fan.LIMIT;\n});\n',
  };
  assertEquals(checkedBy([file], RESOLVER).get("lib/fan/laws.ts#LIMIT"), [
    { path: file.path, published: true },
  ]);
});
