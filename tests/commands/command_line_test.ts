import { assert, assertEquals, assertStringIncludes, assertThrows } from "@std/assert";
import { InputError } from "winterground/basics/mod.ts";
import { type CommandSpec, helpText, readCommandLine } from "winterground/commands/command_line.ts";

const SPEC: CommandSpec = {
  name: "study",
  summary: "Runs a study.",
  args: "[STUDY.yaml]",
  minArgs: 0,
  maxArgs: 1,
  options: [
    { name: "climate", value: "FILE", meaning: "weather" },
    { name: "rerun", meaning: "again" },
  ],
};

Deno.test("readCommandLine() reads arguments, values and switches in any order", () => {
  // Property: the three ways to write an option mean the same
  for (
    const words of [
      ["a.yaml", "--climate", "w.csv", "--rerun"],
      ["--rerun", "--climate=w.csv", "a.yaml"],
      ["--climate", "w.csv", "--rerun", "--", "a.yaml"],
    ]
  ) {
    const line = readCommandLine(SPEC, words);
    assertEquals(line.args, ["a.yaml"]);
    assertEquals(line.values, { climate: "w.csv" });
    assert(line.switches.has("rerun"));
  }
});

Deno.test("readCommandLine() refuses wrong use and says what to do", () => {
  // Property: every kind of wrong use is an InputError with a way out
  const wrong: [string[], string][] = [
    [["--climat", "w.csv"], 'did you mean "--climate"?'],
    [["--zzzzzzzzz"], "known options: --climate, --rerun, --help"],
    [["-x"], "known options"],
    [["--climate"], "needs a value: --climate FILE"],
    [["--climate", "--rerun"], "needs a value"],
    [["--climate="], "needs a value"],
    [["--rerun=yes"], "does not take a value"],
    [["a.yaml", "b.yaml"], "usage: deno task study [STUDY.yaml] [options]"],
  ];
  for (const [words, part] of wrong) {
    const error = assertThrows(() => readCommandLine(SPEC, words), InputError);
    assertStringIncludes(error.message, part);
  }
});

Deno.test("helpText() names every option", () => {
  // Property: nothing is left out
  const text = helpText(SPEC);
  for (const part of ["--climate FILE", "--rerun", "--help", "[STUDY.yaml]"]) {
    assertStringIncludes(text, part);
  }
  for (const word of ["--help", "-h"]) assert(readCommandLine(SPEC, [word, "a", "b"]).help);
});
