import { assertEquals, assertThrows } from "@std/assert";
import { endChild } from "winterground/press/end_child.ts";

const start = (code: string) =>
  new Deno.Command(Deno.execPath(), {
    args: ["eval", "--no-config", code],
    stdin: "null",
    stdout: "null",
    stderr: "null",
  }).spawn();

Deno.test("endChild() ends a program that runs, and lets one be that has ended already", async () => {
  // Property: a run does not fail because a kernel was quicker to end than to be ended
  const runs = start("setTimeout(() => {}, 600_000)");
  endChild(runs, "SIGTERM");
  assertEquals((await runs.status).success, false);
  const over = start("0");
  assertEquals((await over.status).code, 0);
  assertThrows(() => over.kill("SIGKILL"), TypeError, "terminated");
  endChild(over, "SIGKILL");
  endChild(over, "SIGTERM");
});
