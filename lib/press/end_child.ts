/** Ends programs that may have ended already. @module */

/**
 * Sends a signal to a program. One that has ended, which the system knows sooner than this process,
 * needs none.
 *
 * @param child started by this process
 * @param signal such as SIGTERM
 */
export function endChild(child: Deno.ChildProcess, signal: Deno.Signal): void {
  try {
    child.kill(signal);
  } catch (error) {
    if (!(error instanceof TypeError || error instanceof Deno.errors.NotFound)) throw error;
  }
}
