/**
 * A headless Chromium for tests of finished pages, spoken to over its debugging protocol: no driver to
 * download. Where none is installed, tests that need it are skipped with the reason. `firefox.ts` is
 * the same for Firefox.
 *
 * @module
 */

/** A browser that tests may find installed. */
export interface Browser {
  /** as the names of tests say it */
  readonly name: string;
  /** path of its program; null where there is none */
  find(): string | null;
  /** starts it, gives a tab to `work`, and ends it */
  with(work: (tab: Tab) => Promise<void>): Promise<void>;
}

/** Path of the first of some programs that is on the search path; null where none is. */
export function findProgram(programs: readonly string[]): string | null {
  for (const folder of (Deno.env.get("PATH") ?? "").split(":")) {
    for (const name of programs) {
      try {
        if (Deno.statSync(`${folder}/${name}`).isFile) return `${folder}/${name}`;
      } catch {
        // not there
      }
    }
  }
  return null;
}

/** Path of a Chromium on the search path; null where there is none. */
export function findChromium(): string | null {
  return findProgram(["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"]);
}

/** Chromium, or Chrome. */
export const CHROMIUM: Browser = { name: "Chromium", find: findChromium, with: inChromium };

/** A step of a test that needs a browser; skipped, with the reason in its name, where there is none. */
export async function browserStep(
  test: Deno.TestContext,
  name: string,
  fn: () => Promise<void>,
  browser: Browser = CHROMIUM,
): Promise<void> {
  const ignore = browser.find() === null;
  const told = ignore ? `${name} (skipped: no ${browser.name} on the search path)` : name;
  await test.step({ name: told, ignore, fn });
}

/** How a page is looked at. */
export interface View {
  /** width of the window, px */
  readonly width: number;
  /** height of the window, px */
  readonly height?: number;
  /** true for the page as it is printed */
  readonly print?: boolean;
}

/** An open page. */
export interface Tab {
  /** Opens an address and waits until it is loaded. */
  open(address: string): Promise<void>;
  /** Runs a script in every page that is opened from now on, before its own. */
  before(script: string): Promise<void>;
  /** Looks at the page in another way. */
  look(view: View): Promise<void>;
  /** Value of an expression in the page, promises awaited. */
  value<T>(expression: string): Promise<T>;
  /** Types a text into the element that has the focus. */
  type(text: string): Promise<void>;
  /** Presses and lets go a key such as "Tab". */
  press(key: string): Promise<void>;
  /** What the page complained of since it was opened: errors, refused loads, breaches of its policy. */
  readonly complaints: string[];
  /** Addresses it asked for since it was opened; what lies in the page itself is left aside. */
  readonly asked: string[];
}

type Message = {
  readonly id?: number;
  readonly method?: string;
  readonly params?: Record<string, unknown>;
  readonly result?: Record<string, unknown>;
  readonly error?: { readonly message: string };
};

/** Starts Chromium, gives a tab to `work`, and ends it. */
export async function inChromium(work: (tab: Tab) => Promise<void>): Promise<void> {
  const profile = await Deno.makeTempDir();
  const program = new Deno.Command(findChromium()!, {
    args: [
      "--headless=new",
      "--no-sandbox",
      "--disable-gpu",
      "--no-first-run",
      "--disable-extensions",
      "--disable-background-networking",
      "--remote-debugging-port=0",
      `--user-data-dir=${profile}`,
      "about:blank",
    ],
    stdin: "null",
    stdout: "null",
    stderr: "piped",
  }).spawn();
  await inProgram(program, { profile, address: pageAddress, tabOf }, work);
}

/** Gives a tab of a browser that was started to `work`, and ends the browser. */
export async function inProgram(
  program: Deno.ChildProcess,
  { profile, address, tabOf }: {
    /** its folder, which is removed */
    readonly profile: string;
    /** where it is spoken to */
    address(program: Deno.ChildProcess): Promise<string>;
    tabOf(socket: WebSocket): Promise<Tab>;
  },
  work: (tab: Tab) => Promise<void>,
): Promise<void> {
  try {
    const socket = await opened(await address(program));
    try {
      await work(await tabOf(socket));
    } finally {
      await closed(socket);
    }
  } finally {
    program.kill("SIGKILL");
    await program.status;
    await removeProfile(profile);
  }
}

/** Removes a browser's folder; its helpers may write for a moment longer. */
async function removeProfile(folder: string): Promise<void> {
  for (let tries = 0; tries < 20; tries++) {
    if (await Deno.remove(folder, { recursive: true }).then(() => true, () => false)) return;
    await new Promise((done) => setTimeout(done, 100));
  }
}

/** The first match in what a program says on its standard error, which is read on behind it. */
export async function saidOnError(program: Deno.ChildProcess, wanted: RegExp): Promise<string> {
  const reader = program.stderr.pipeThrough(new TextDecoderStream()).getReader();
  let said = "";
  while (!wanted.test(said)) {
    const { value, done } = await reader.read();
    if (done) throw new Error(`the browser ended: ${said}`);
    said += value;
  }
  (async () => { // read on, so that it never waits for us
    while (!(await reader.read()).done);
  })().catch(() => {});
  return wanted.exec(said)![1]!;
}

/** Opens a socket. */
async function opened(address: string): Promise<WebSocket> {
  const socket = new WebSocket(address);
  await new Promise((done, failed) => {
    socket.onopen = done;
    socket.onerror = () => failed(new Error(`cannot reach ${address}`));
  });
  return socket;
}

/** Closes a socket and waits until it is closed. */
async function closed(socket: WebSocket): Promise<void> {
  const done = new Promise((resume) => socket.onclose = resume);
  socket.close();
  await done;
}

/** Address of the first tab, from what the program says on its standard error. */
async function pageAddress(program: Deno.ChildProcess): Promise<string> {
  const address = await saidOnError(program, /DevTools listening on (\S+)/);
  const port = new URL(address).port;
  const list = await (await fetch(`http://127.0.0.1:${port}/json/list`)).json();
  const tab = list.find((one: { type: string }) => one.type === "page");
  return tab.webSocketDebuggerUrl;
}

async function tabOf(socket: WebSocket): Promise<Tab> {
  let count = 0;
  const waiting = new Map<number, (message: Message) => void>();
  let loaded: (() => void) | undefined;
  const complaints: string[] = [];
  const asked: string[] = [];
  socket.onmessage = ({ data }) => {
    const message = JSON.parse(data) as Message;
    if (message.id !== undefined) waiting.get(message.id)?.(message);
    const params = message.params ?? {};
    if (message.method === "Page.loadEventFired") loaded?.();
    if (message.method === "Runtime.exceptionThrown") complaints.push(JSON.stringify(params));
    if (message.method === "Log.entryAdded") {
      complaints.push(String((params.entry as { text: string }).text));
    }
    if (message.method === "Network.requestWillBeSent") {
      const { url } = params.request as { url: string };
      if (!url.startsWith("data:")) asked.push(url);
    }
  };
  const call = async (method: string, params: Record<string, unknown> = {}) => {
    const id = ++count;
    const answer = new Promise<Message>((done) => waiting.set(id, done));
    socket.send(JSON.stringify({ id, method, params }));
    const { result, error } = await answer;
    waiting.delete(id);
    if (error !== undefined) throw new Error(`${method}: ${error.message}`);
    return result!;
  };
  for (const domain of ["Page", "Runtime", "Log", "Network"]) await call(`${domain}.enable`);
  return {
    complaints,
    asked,
    async open(address) {
      complaints.length = 0;
      asked.length = 0;
      const done = new Promise<void>((resolve) => loaded = resolve);
      await call("Page.navigate", { url: address });
      await done;
    },
    async before(script) {
      await call("Page.addScriptToEvaluateOnNewDocument", { source: script });
    },
    async look({ width, height = 900, print = false }) {
      await call("Emulation.setDeviceMetricsOverride", {
        width,
        height,
        deviceScaleFactor: 1,
        mobile: width < 600,
      });
      await call("Emulation.setEmulatedMedia", { media: print ? "print" : "screen" });
    },
    async value<T>(expression: string) {
      const { result, exceptionDetails } = await call("Runtime.evaluate", {
        expression,
        awaitPromise: true,
        returnByValue: true,
      }) as { result: { value: T }; exceptionDetails?: unknown };
      if (exceptionDetails !== undefined) throw new Error(JSON.stringify(exceptionDetails));
      return result.value;
    },
    async type(text) {
      await call("Input.insertText", { text });
    },
    async press(key) {
      const codes: Readonly<Record<string, number>> = { Tab: 9, Enter: 13, ArrowRight: 39 };
      const params = { key, code: key, windowsVirtualKeyCode: codes[key] ?? 0 };
      await call("Input.dispatchKeyEvent", {
        type: "keyDown",
        ...params,
        ...(key === "Enter" ? { text: "\r" } : {}),
      });
      await call("Input.dispatchKeyEvent", { type: "keyUp", ...params });
    },
  };
}

/** A finding of the accessibility checker. */
export interface Finding {
  readonly id: string;
  readonly impact: string;
  readonly places: readonly string[];
}

/** Serious and critical findings of axe-core on the page as it is looked at. */
export async function seriousFindings(tab: Tab): Promise<Finding[]> {
  const { source } = (await import("axe-core")).default;
  await tab.value(`${source}; 0`);
  return await tab.value<Finding[]>(`axe.run(document, { resultTypes: ["violations"] }).then((r) =>
    r.violations.filter(({ impact }) => impact === "serious" || impact === "critical")
      .map(({ id, impact, nodes }) =>
        ({ id, impact, places: nodes.slice(0, 3).map(({ html, failureSummary }) =>
          html.slice(0, 200) + " " + failureSummary.slice(0, 200)) })))`);
}

/** How far the page reaches beyond the window sideways, px; 0 where it need not be moved. */
export function beyondWindow(tab: Tab): Promise<number> {
  return tab.value<number>(
    "document.documentElement.scrollWidth - document.documentElement.clientWidth",
  );
}
