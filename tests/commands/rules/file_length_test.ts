import { assertEquals } from "@std/assert";
import { lengthFaults, MOST_LINES } from "../../../lib/commands/rules/file_length.ts";

const body = (lines: number) => "const a = 1;\n".repeat(lines);

Deno.test("lengthFaults() allows the limit and asks for a reason beyond it", () => {
  // Property: at the limit and one beyond
  assertEquals(lengthFaults("a.ts", body(MOST_LINES)), []);
  const [fault] = lengthFaults("a.ts", body(MOST_LINES + 1));
  assertEquals(fault?.startsWith(`a.ts: ${MOST_LINES + 1} lines`), true);
});

Deno.test("lengthFaults() takes a reason in the first comment only, block or lines", () => {
  // Property: where the reason stands
  const long = body(MOST_LINES);
  assertEquals(
    lengthFaults("a.ts", `/**\n * A list. It is long\n * because it is one.\n */\n${long}`),
    [],
  );
  assertEquals(lengthFaults("a.ts", `// Cases, long because they are\n// published.\n${long}`), []);
  assertEquals(lengthFaults("a.ts", `/** A list. */\n/** long because */\n${long}`).length, 1);
  assertEquals(lengthFaults("a.ts", `${long}// long because it is at the end\n`).length, 1);
});
