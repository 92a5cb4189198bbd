/** A bar on a terminal. @module */
import cliProgress from "cli-progress";

/** A bar that goes away at its end and leaves signals to the command. */
export function terminalBar(format: string): cliProgress.SingleBar {
  return new cliProgress.SingleBar({
    format,
    barsize: 24,
    hideCursor: true,
    gracefulExit: false,
    stopOnComplete: false,
    clearOnComplete: true,
  }, cliProgress.Presets.shades_classic);
}

/** Clears the line of the bar, so that a message can be printed there. */
export function clearBarLine(): void {
  Deno.stderr.writeSync(new TextEncoder().encode("\r\x1b[K"));
}
