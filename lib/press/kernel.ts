/**
 * One running Deno kernel: start, execute, end. Nothing of it is left behind, whatever happens.
 *
 * @module
 */
import { Dealer, Subscriber } from "zeromq";
import { newConnection, writeConnectionFile } from "./connection.ts";
import { kernelEnvironment } from "./environment.ts";
import { decodeMessage, encodeMessage, newRequest, type WireMessage } from "./wire.ts";

/** How to start a kernel. */
export interface KernelOptions {
  /** folder the notebook stands in; deno.json is looked for from here upwards */
  readonly folder: string;
  /** additions to the kernel's environment */
  readonly environment?: Readonly<Record<string, string | undefined>> | undefined;
  /** ends the kernel when aborted */
  readonly signal?: AbortSignal | undefined;
  /** s a kernel may take until it answers */
  readonly startLimit?: number | undefined;
}

/** How one cell is executed. */
export interface ExecuteOptions {
  /** s the cell may take */
  readonly limit: number;
  /** outputs that are certain to come; the press waits a little longer for them */
  readonly expectedOutputs?: number | undefined;
  /** keeps the run out of the kernel's history and count */
  readonly silent?: boolean | undefined;
}

/** What came of one cell. */
export interface Execution {
  /** "hung": not done within its limit; "died": the kernel ended by itself */
  readonly status: "ok" | "error" | "hung" | "died";
  /** content of the reply, empty when none came */
  readonly reply: Readonly<Record<string, unknown>>;
  /** everything the output channel carried for this cell, in order */
  readonly messages: readonly WireMessage[];
  /** faults of the channel, such as a wrong signature */
  readonly faults: readonly string[];
}

/** A started kernel. */
export interface Kernel {
  /** what the kernel says of itself (`kernel_info_reply`) */
  readonly info: Readonly<Record<string, unknown>>;
  /** Executes code and listens until the output channel is quiet. */
  execute(code: string, options: ExecuteOptions): Promise<Execution>;
  /** Ends the kernel and removes its connection file. */
  close(): Promise<void>;
}

/** ms without a message after which the output channel counts as quiet. */
const QUIET = 15;
/** ms the press waits for outputs that have not come although the cell is done. */
const LATE = 1500;
/** ms between looks at a socket; waiting in `receive()` misses wake-up calls under Deno. */
const LOOK_AGAIN = 3;
/** Kind of messages that end up as outputs. */
const SHOWN = new Set(["display_data", "execute_result"]);

const pause = (milliseconds: number): Promise<void> =>
  new Promise((done) => setTimeout(done, milliseconds));

/** What the output channel has brought since the last request. */
interface Inbox {
  messages: WireMessage[];
  faults: string[];
  lastArrival: number;
}

/**
 * Starts a kernel and waits until it answers; tries again on other ports when another program took
 * one of them in between.
 *
 * @throws {Error} when no kernel answers
 */
export async function startKernel(options: KernelOptions): Promise<Kernel> {
  let reason = "";
  for (let attempt = 0; attempt < 3; attempt++) {
    options.signal?.throwIfAborted();
    try {
      return await startOnce(options);
    } catch (error) {
      options.signal?.throwIfAborted();
      reason = error instanceof Error ? error.message : String(error);
    }
  }
  throw new Error(`Cannot start the Deno kernel: ${reason}`);
}

async function startOnce(options: KernelOptions): Promise<Kernel> {
  const connection = newConnection();
  const file = await writeConnectionFile(connection);
  const child = new Deno.Command(Deno.execPath(), {
    args: ["jupyter", "--kernel", "--conn", file],
    cwd: options.folder,
    clearEnv: true,
    env: kernelEnvironment(Deno.env.toObject(), options.environment),
    stdin: "null",
    stdout: "null",
    stderr: "piped",
  }).spawn();
  const shell = new Dealer({ linger: 0 });
  const output = new Subscriber({ linger: 0 });
  const complaints = collectText(child.stderr);
  let ended = false;
  let closing = false;
  const end = child.status.then(() => ended = true);
  const close = async (): Promise<void> => {
    options.signal?.removeEventListener("abort", kill);
    kill();
    await end;
    await complaints.done;
    closing = true;
    await Promise.all(listeners); // a socket that is read while it closes can take the process down
    shell.close();
    output.close();
    await Deno.remove(file).catch(() => {});
  };
  function kill(): void {
    if (!ended) child.kill("SIGKILL");
  }
  options.signal?.addEventListener("abort", kill);

  const session = crypto.randomUUID();
  const inbox: Inbox = { messages: [], faults: [], lastArrival: performance.now() };
  const replies = new Map<string, (reply: WireMessage) => void>();
  const where = `tcp://${connection.ip}`;
  output.connect(`${where}:${connection.iopub_port}`);
  output.subscribe();
  shell.connect(`${where}:${connection.shell_port}`);
  const listenTo = (socket: Dealer | Subscriber, take: (message: WireMessage) => void) =>
    listen({ socket, key: connection.key, inbox, take, until: () => closing });
  const listeners = [
    listenTo(output, (message) => inbox.messages.push(message)),
    listenTo(shell, (reply) => replies.get(reply.parent.msg_id ?? "")?.(reply)),
  ];

  const request = async (type: string, content: Record<string, unknown>) => {
    const message = newRequest(type, content, session);
    const id = message.header.msg_id!;
    const answer = new Promise<WireMessage>((done) => replies.set(id, done));
    await shell.send(encodeMessage(connection.key, message));
    return { id, answer };
  };
  const within = async <T>(work: Promise<T>, seconds: number): Promise<T | "hung" | "died"> => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const limit = new Promise<"hung">((done) => {
      timer = setTimeout(() => done("hung"), seconds * 1000);
    });
    const answer = await Promise.race([work, limit, end.then(() => "died" as const)]);
    clearTimeout(timer);
    return answer;
  };

  try {
    const info = await greet(options.startLimit ?? 60);
    await Deno.remove(file); // it has been read
    return { info, execute, close };
  } catch (error) {
    await close();
    throw error;
  }

  /** Asks who is there until both channels have answered. */
  async function greet(seconds: number): Promise<Readonly<Record<string, unknown>>> {
    const deadline = performance.now() + seconds * 1000;
    while (performance.now() < deadline) {
      const { answer } = await request("kernel_info_request", {});
      const reply = await within(answer, (deadline - performance.now()) / 1000);
      if (reply === "died") throw new Error(`it exited at once: ${complaints.text().trim()}`);
      if (reply === "hung") break;
      await pause(QUIET);
      if (inbox.messages.length > 0) return reply.content;
    }
    throw new Error(`it did not answer within ${seconds} s`);
  }

  async function execute(code: string, how: ExecuteOptions): Promise<Execution> {
    inbox.messages = [];
    inbox.faults = [];
    const silent = how.silent ?? false;
    const { id, answer } = await request("execute_request", {
      code,
      silent,
      "store_history": !silent,
      "user_expressions": {},
      "allow_stdin": false,
      "stop_on_error": true,
    });
    const reply = await within(answer, how.limit);
    replies.delete(id);
    const done = typeof reply === "string" ? undefined : reply;
    if (done !== undefined) await untilQuiet(id, how.expectedOutputs ?? 0, done);
    const messages = inbox.messages.filter((message) => message.parent.msg_id === id);
    return {
      status: typeof reply === "string" ? reply : reply.content.status === "ok" ? "ok" : "error",
      reply: done?.content ?? {},
      messages,
      faults: [...inbox.faults],
    };
  }

  /** Listens until the cell is idle, its outputs are there and nothing has come for a while. */
  async function untilQuiet(id: string, expected: number, reply: WireMessage): Promise<void> {
    const replied = performance.now();
    while (!ended) {
      const now = performance.now();
      const own = inbox.messages.filter((message) => message.parent.msg_id === id);
      const idle = own.some((message) => message.content.execution_state === "idle");
      const shown = own.filter((message) => SHOWN.has(message.header.msg_type ?? "")).length;
      const complete = idle && (shown >= expected || reply.content.status !== "ok");
      if (complete && now - Math.max(inbox.lastArrival, replied) >= QUIET) return;
      if (now - Math.max(inbox.lastArrival, replied) >= LATE) return;
      await pause(5);
    }
  }
}

/** A socket, and what becomes of what it brings. */
interface Listening {
  readonly socket: Dealer | Subscriber;
  readonly key: string;
  readonly inbox: Inbox;
  readonly take: (message: WireMessage) => void;
  readonly until: () => boolean;
}

/** Reads a socket until it is to be closed. */
async function listen({ socket, key, inbox, take, until }: Listening): Promise<void> {
  while (!until()) {
    if (!socket.readable) {
      await pause(LOOK_AGAIN);
      continue;
    }
    const frames = await socket.receive();
    inbox.lastArrival = performance.now();
    try {
      take(decodeMessage(key, frames as Uint8Array[]));
    } catch (error) {
      inbox.faults.push(String(error));
    }
  }
}

/** Keeps the text of a stream. */
function collectText(stream: ReadableStream<Uint8Array>): {
  text: () => string;
  done: Promise<void>;
} {
  let text = "";
  const read = async (): Promise<void> => {
    const decoder = new TextDecoder();
    for await (const chunk of stream) text += decoder.decode(chunk, { stream: true });
  };
  return { text: () => text, done: read() };
}
