/**
 * A headless Firefox for tests of finished pages, spoken to over WebDriver BiDi, which it speaks by
 * itself: no driver to download. The protocol is the W3C's "WebDriver BiDi", working draft. It tells of
 * what a page asks the network for, but not of files.
 *
 * @module
 */
import { type Browser, findProgram, inProgram, saidOnError, type Tab } from "./browser.ts";

/** Path of a Firefox on the search path; null where there is none. */
function findFirefox(): string | null {
  return findProgram(["firefox-esr", "firefox"]);
}

/** Settings of a profile that asks nothing of the network by itself. */
const SETTINGS = {
  "app.normandy.enabled": false,
  "app.update.auto": false,
  "browser.safebrowsing.malware.enabled": false,
  "browser.safebrowsing.phishing.enabled": false,
  "browser.shell.checkDefaultBrowser": false,
  "datareporting.healthreport.uploadEnabled": false,
  "datareporting.policy.dataSubmissionEnabled": false,
  "extensions.update.enabled": false,
  "network.captive-portal-service.enabled": false,
  "network.connectivity-service.enabled": false,
  "services.settings.server": "data:,#none/v1",
  "toolkit.telemetry.enabled": false,
} as const;

/** Firefox, or its release with longer support. */
export const FIREFOX: Browser = { name: "Firefox", find: findFirefox, with: inFirefox };

async function inFirefox(work: (tab: Tab) => Promise<void>): Promise<void> {
  const profile = await Deno.makeTempDir();
  await Deno.writeTextFile(
    `${profile}/user.js`,
    Object.entries(SETTINGS)
      .map(([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});\n`)
      .join(""),
  );
  const program = new Deno.Command(findFirefox()!, {
    args: ["--headless", "--no-remote", "--profile", profile, "--remote-debugging-port", "0"],
    stdin: "null",
    stdout: "null",
    stderr: "piped",
  }).spawn();
  const address = async () =>
    `${await saidOnError(program, /WebDriver BiDi listening on (\S+)/)}/session`;
  await inProgram(program, { profile, address, tabOf }, work);
}

/** A value as the protocol writes it. */
type Remote =
  | { readonly type: "undefined" | "null" }
  | { readonly type: "string"; readonly value: string }
  | { readonly type: "boolean"; readonly value: boolean }
  /** numbers that JSON has no word for come as text */
  | { readonly type: "number"; readonly value: number | string }
  | { readonly type: "array"; readonly value: readonly Remote[] }
  | { readonly type: "object"; readonly value: readonly (readonly [string, Remote])[] };

/** The value itself; undefined for what has no plain one, such as an element. */
function plain(remote: Remote): unknown {
  switch (remote.type) {
    case "null":
      return null;
    case "string":
    case "boolean":
      return remote.value;
    case "number":
      return Number(remote.value);
    case "array":
      return remote.value.map(plain);
    case "object":
      return Object.fromEntries(remote.value.map(([key, value]) => [key, plain(value)]));
    default:
      return undefined;
  }
}

/** Keys as the protocol names them: WebDriver, "Keyboard actions". */
const KEYS: Readonly<Record<string, string>> = {
  Tab: "\uE004",
  Enter: "\uE007",
  ArrowRight: "\uE014",
};

/** Says breaches of the page's policy where errors are said: the log has none of them. */
const SAY_BREACHES = `() => addEventListener("securitypolicyviolation", (breach) =>
  console.error("policy: " + breach.violatedDirective + " " + breach.blockedURI))`;

type Message = {
  readonly id?: number;
  readonly type: "success" | "error" | "event";
  readonly method?: string;
  readonly params?: Record<string, unknown>;
  readonly result?: Record<string, unknown>;
  readonly message?: string;
};

async function tabOf(socket: WebSocket): Promise<Tab> {
  let count = 0;
  const pending = new Map<number, (message: Message) => void>();
  const complaints: string[] = [];
  const asked: string[] = [];
  socket.onmessage = ({ data }) => {
    const message = JSON.parse(data) as Message;
    if (message.id !== undefined) pending.get(message.id)?.(message);
    const params = message.params ?? {};
    if (message.method === "log.entryAdded" && params.level === "error") {
      complaints.push(String(params.text));
    }
    if (message.method === "network.beforeRequestSent") {
      const { url } = params.request as { url: string };
      if (!url.startsWith("data:")) asked.push(url);
    }
  };
  const call = async (method: string, params: Record<string, unknown> = {}) => {
    const id = ++count;
    const answer = new Promise<Message>((done) => pending.set(id, done));
    socket.send(JSON.stringify({ id, method, params }));
    const { type, result, message } = await answer;
    pending.delete(id);
    if (type === "error") throw new Error(`${method}: ${message}`);
    return result!;
  };
  await call("session.new", { capabilities: {} });
  await call("session.subscribe", { events: ["log.entryAdded", "network.beforeRequestSent"] });
  await call("script.addPreloadScript", { functionDeclaration: SAY_BREACHES });
  const tree = await call("browsingContext.getTree") as { contexts: { context: string }[] };
  const { context } = tree.contexts[0]!;
  const keys = (pressed: readonly string[]) =>
    call("input.performActions", {
      context,
      actions: [{
        type: "key",
        id: "keyboard",
        actions: pressed.flatMap((value) => [{ type: "keyDown", value }, { type: "keyUp", value }]),
      }],
    });
  return {
    complaints,
    asked,
    async open(address) {
      complaints.length = 0;
      asked.length = 0;
      await call("browsingContext.navigate", { context, url: address, wait: "complete" });
    },
    async before(script) {
      await call("script.addPreloadScript", { functionDeclaration: `() => { ${script} }` });
    },
    async look({ width, height = 900, print = false }) {
      if (print) throw new Error("Firefox shows no page as it is printed: look at it in Chromium");
      const viewport = { width, height };
      await call("browsingContext.setViewport", { context, viewport, devicePixelRatio: 1 });
    },
    async value<T>(expression: string) {
      const answer = await call("script.evaluate", {
        expression,
        target: { context },
        awaitPromise: true,
      }) as { type: "success" | "exception"; result: Remote; exceptionDetails?: { text: string } };
      if (answer.type === "exception") throw new Error(answer.exceptionDetails!.text);
      return plain(answer.result) as T;
    },
    async type(text) {
      await keys([...text]);
    },
    async press(key) {
      await keys([KEYS[key] ?? key]);
    },
  };
}
