// Property: a message holds nothing that a terminal obeys, and no more than a person reads.
import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import { InputError, InputErrors, readable } from "winterground/basics/mod.ts";

Deno.test("readable() leaves no sign that a terminal obeys or nobody sees, and every other", () => {
  assertEquals(
    readable("a\u001b]0;x\u0007b\r\u202ec\u0000"),
    "a\\u001b]0;x\\u0007b\\u000d\\u202ec\\u0000",
  );
  assertEquals(readable("Ærø\t3 m²\n“x” 😀"), "Ærø\t3 m²\n“x” 😀");
  fc.assert(fc.property(fc.string({ unit: "binary" }), (text) => {
    const shown = readable(text);
    // deno-lint-ignore no-control-regex -- those are the signs that must be gone
    assert(!/[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ufeff]/.test(shown));
    assertEquals(readable(shown), shown);
  }));
});

Deno.test("an InputError quotes no more than a person reads, and says at its end what to do", () => {
  const { message } = new InputError(`Cannot use "${"x".repeat(1e6)}"; correct the line`, {
    file: "a\u001b[2J.yaml",
    line: 3,
  });
  assert(message.length < 2100, String(message.length));
  assert(message.startsWith('a\\u001b[2J.yaml:3: Cannot use "xxx'), message.slice(0, 80));
  assert(message.endsWith("; correct the line"));
  const faults = Array.from(
    { length: 50 },
    (_, k) => new InputError(`fault ${k} ${"y".repeat(200)}`),
  );
  assertEquals(new InputErrors(faults).message, faults.map((fault) => fault.message).join("\n"));
  const lines = new InputErrors([...faults, ...faults]).message.split("\n");
  assertEquals([lines.length, lines.at(-1)], [61, "and 40 more faults"]);
});
