/**
 * What a kernel does before the first cell: it ties its life to the press, reports what goes wrong
 * outside a cell's own course, and refuses outputs that are too large to arrive.
 *
 * @module
 */

/** Message on the output channel for an error that no cell's reply carries. */
export const STRAY_ERROR = "winterground_stray_error";

/** Characters one output may have. */
export const MOST_SHOWN = 10_000_000;
/** Characters one call of `console` may print. */
export const MOST_PRINTED = 1_000_000;
/** Characters the outputs of a notebook may have in all. */
export const MOST_IN_NOTEBOOK = 60_000_000;

/** Global under which a kernel keeps the number of a cell that starts timers. */
const CELL = "winterground.cell";

/** What a kernel is told of its press. */
interface Setting {
  readonly strayError: string;
  readonly mostShown: number;
  readonly mostPrinted: number;
  readonly cell: string;
}

/** Code that a kernel executes first; its standard input is the line to the press. */
export function preludeCode(press: number): string {
  const setting: Setting = {
    strayError: STRAY_ERROR,
    mostShown: MOST_SHOWN,
    mostPrinted: MOST_PRINTED,
    cell: CELL,
  };
  const leash = `(${holdLeash})(${press})`;
  const module = `data:application/javascript,${encodeURIComponent(leash)}`;
  return `new Worker(${JSON.stringify(module)}, { type: "module" });
(${watchKernel})(${JSON.stringify(setting)});`;
}

/** True for code that starts timers. */
export function startsTimers(code: string): boolean {
  return /\bset(?:Timeout|Interval|Immediate)\b/.test(code);
}

/** Code that tells a kernel in which cell the timers it is about to start stand; 0 for none. */
export function cellMark(cell: number): string {
  return `globalThis[Symbol.for(${JSON.stringify(CELL)})] = ${cell};`;
}

/**
 * Ends the kernel with everything that its cells started when the line to the press breaks or the
 * press is gone. In a thread of its own: a cell that computes lets nothing else run.
 */
function holdLeash(press: number): void {
  const end = (): void => {
    try {
      if (Deno.build.os !== "windows") Deno.kill(-Deno.pid, "SIGKILL"); // the group, itself included
    } finally {
      Deno.kill(Deno.pid, "SIGKILL");
    }
  };
  setInterval(() => {
    if (Deno.ppid !== press) end();
  }, 500);
  const wait = async (): Promise<void> => {
    while (await Deno.stdin.read(new Uint8Array(16)).catch(() => null) !== null);
    end();
  };
  wait();
}

/** Runs in the kernel; uses nothing from this module but its argument. */
function watchKernel({ strayError, mostShown, mostPrinted, cell }: Setting): void {
  const kernel = Deno.jupyter as unknown as Record<string, (...words: unknown[]) => unknown>;
  const { broadcast, display, format } = kernel as Record<
    string,
    (...words: unknown[]) => Promise<unknown>
  >;
  const currentCell = (): number => Reflect.get(globalThis, Symbol.for(cell)) ?? 0;
  const startedIn = new WeakMap<object, number>();

  const report = (event: Event, error: unknown): void => {
    event.preventDefault(); // the kernel would stand still for good
    const known = error instanceof Error;
    broadcast!(strayError, {
      ename: known ? error.name : "Error",
      evalue: known ? error.message : String(error),
      traceback: known && error.stack !== undefined ? error.stack.split("\n") : [],
      cell: (error instanceof Object ? startedIn.get(error) : undefined) ?? currentCell(),
    });
  };
  addEventListener("error", (event) => report(event, event.error ?? event.message));
  addEventListener("unhandledrejection", (event) => report(event, event.reason));

  for (const name of ["setTimeout", "setInterval", "setImmediate"] as const) {
    const start = Reflect.get(globalThis, name) as (...words: unknown[]) => unknown;
    const startHere = (callback: unknown, ...rest: unknown[]): unknown => {
      if (typeof callback !== "function") return start(callback, ...rest);
      const here = currentCell();
      return start(function (this: unknown, ...words: unknown[]) {
        try {
          return callback.apply(this, words);
        } catch (error) {
          if (error instanceof Object && !startedIn.has(error)) startedIn.set(error, here);
          throw error;
        }
      }, ...rest);
    };
    Object.defineProperties(startHere, Object.getOwnPropertyDescriptors(start));
    Object.defineProperty(globalThis, name, {
      value: startHere,
      writable: true,
      configurable: true,
    });
  }

  const check = (size: number, most: number, what: string): void => {
    if (size <= most) return;
    throw new RangeError(
      `${what} of ${size} characters is too large: at most ${most} are allowed; ` +
        "show fewer points or rows, or write them to a file",
    );
  };
  const sizeOf = (data: unknown): number =>
    Object.values(data ?? {}).reduce<number>(
      (sum, part) => sum + (typeof part === "string" ? part : JSON.stringify(part) ?? "").length,
      0,
    );
  kernel.broadcast = (type, content, ...rest) => {
    check(sizeOf((content as { data?: unknown } | undefined)?.data), mostShown, "An output");
    return broadcast!(type, content, ...rest);
  };
  kernel.display = async (item, options) => {
    const raw = (options as { raw?: boolean } | undefined)?.raw === true;
    const data = raw ? item : await format!(item);
    check(sizeOf(data), mostShown, "An output");
    return await display!(data, { ...options as object, raw: true });
  };
  const printer = globalThis["console"];
  for (const name of ["log", "info", "debug", "warn", "error", "table", "dir"] as const) {
    const print = printer[name] as (...words: unknown[]) => void;
    printer[name] = (...words: unknown[]): void => {
      const texts = words.filter((word) => typeof word === "string");
      check(texts.reduce((sum, text) => sum + text.length, 0), mostPrinted, "A printed text");
      print(...words);
    };
  }
}
