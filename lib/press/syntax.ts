/**
 * Finds out why a cell does not parse: the kernel says only that it does not.
 *
 * @module
 */

import { kernelEnvironment } from "./environment.ts";

/** The parser's message with line and column, as the formatter of Deno gives it. */
export async function syntaxFault(code: string): Promise<string> {
  const child = new Deno.Command(Deno.execPath(), {
    args: ["fmt", "--no-config", "--ext", "ts", "-"],
    clearEnv: true,
    env: kernelEnvironment((name) => Deno.env.get(name)),
    stdin: "piped",
    stdout: "null",
    stderr: "piped",
  }).spawn();
  const writer = child.stdin.getWriter();
  await writer.write(new TextEncoder().encode(code));
  await writer.close();
  const { success, stderr } = await child.output();
  const text = new TextDecoder().decode(stderr).trim();
  return success || text === "" ? "Execution failed without a reason" : text;
}
