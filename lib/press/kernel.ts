/**
 * One running Deno kernel: start, execute, end. Nothing of it is left behind, whatever happens.
 *
 * @module
 */
import type { Dealer, Subscriber } from "zeromq";
import { newConnection, writeConnectionFile } from "./connection.ts";
import { kernelEnvironment } from "./environment.ts";
import { cellMark, preludeCode, startsTimers, STRAY_ERROR } from "./prelude.ts";
import { startProgram } from "./program.ts";
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
  /** number of the cell among the code cells, from 1 */
  readonly cell?: number | undefined;
  /** outputs that are certain to come; the press waits a little longer for them */
  readonly expectedOutputs?: number | undefined;
  /** keeps the run out of the kernel's history and count */
  readonly silent?: boolean | undefined;
}

/** What came of one cell. */
export interface Execution {
  /**
   * "stray": a timer, an event or a promise without `await` failed; "hung": not done within its
   * limit; "died": the kernel ended by itself
   */
  readonly status: "ok" | "error" | "stray" | "hung" | "died";
  /** content of the reply, empty when none came */
  readonly reply: Readonly<Record<string, unknown>>;
  /** everything the output channel carried for this cell, in order */
  readonly messages: readonly WireMessage[];
  /** faults of the channel, such as a wrong signature, since the cell before */
  readonly faults: readonly string[];
  /** the error, where `status` is "stray" */
  readonly stray?: StrayError | undefined;
  /** what the kernel said at its end, where `status` is "died" */
  readonly lastWords?: string | undefined;
}

/** An error outside the course of a cell. */
export interface StrayError {
  /** name of the error's class */
  readonly ename: string;
  /** message */
  readonly evalue: string;
  /** stack, a line an entry */
  readonly traceback: readonly string[];
  /** number among the code cells of the one that started the timer; 0 where that is not known */
  readonly cell: number;
}

/** A started kernel. */
export interface Kernel {
  /** what the kernel says of itself (`kernel_info_reply`) */
  readonly info: Readonly<Record<string, unknown>>;
  /** Executes code and listens until the output channel is quiet. */
  execute(code: string, options: ExecuteOptions): Promise<Execution>;
  /** Ends the kernel and what its cells started, and removes its connection file. */
  close(): Promise<void>;
}

/** ms without a message after which the output channel counts as quiet. */
const QUIET = 15;
/** ms the press waits for outputs that have not come although the cell is done. */
const LATE = 1500;
/** ms the press waits for the end of a cell's outputs when the cell is done. */
const NEVER = 5000;
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
  // native: loaded where a kernel is run, and nowhere else
  const { Dealer, Subscriber } = await import("zeromq");
  const connection = newConnection();
  const file = await writeConnectionFile(connection);
  const program = startProgram(Deno.execPath(), {
    args: ["jupyter", "--kernel", "--conn", file],
    folder: options.folder,
    environment: kernelEnvironment((name) => Deno.env.get(name), options.environment),
  });
  const shell = new Dealer({ linger: 0 });
  const output = new Subscriber({ linger: 0 });
  let closing = false;
  const kill = (): void => void program.end();
  const close = async (): Promise<void> => {
    options.signal?.removeEventListener("abort", kill);
    await program.end();
    closing = true;
    await Promise.all(listeners); // a socket that is read while it closes can take the process down
    shell.close();
    output.close();
    await Deno.remove(file).catch(() => {});
  };
  options.signal?.addEventListener("abort", kill);

  const session = crypto.randomUUID();
  const inbox: Inbox = { messages: [], faults: [], lastArrival: performance.now() };
  const stray = Promise.withResolvers<StrayError>();
  let marked = 0;
  const replies = new Map<string, (reply: WireMessage) => void>();
  const where = `tcp://${connection.ip}`;
  output.connect(`${where}:${connection.iopub_port}`);
  output.subscribe();
  shell.connect(`${where}:${connection.shell_port}`);
  const listenTo = (socket: Dealer | Subscriber, take: (message: WireMessage) => void) =>
    listen({ socket, key: connection.key, inbox, take, until: () => closing });
  const listeners = [
    listenTo(output, (message) => {
      if (message.header.msg_type !== STRAY_ERROR) inbox.messages.push(message);
      else stray.resolve(message.content as unknown as StrayError);
    }),
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
    const answer = await Promise.race([work, limit, program.ended.then(() => "died" as const)]);
    clearTimeout(timer);
    return answer;
  };

  try {
    const info = await greet(options.startLimit ?? 60);
    await Deno.remove(file); // it has been read
    await execute(preludeCode(Deno.pid), { limit: 30, silent: true });
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
      if (reply === "died") throw new Error(`it exited at once: ${program.lastWords()}`);
      if (reply === "hung") break;
      await pause(QUIET);
      if (inbox.messages.length > 0) return reply.content;
    }
    throw new Error(`it did not answer within ${seconds} s`);
  }

  async function execute(code: string, how: ExecuteOptions): Promise<Execution> {
    inbox.messages = [];
    const silent = how.silent ?? false;
    const mark = startsTimers(code) ? how.cell ?? 0 : 0;
    if (mark !== marked) await send(cellMark(marked = mark), true);
    const { id, answer } = await send(code, silent);
    let strayed: StrayError | undefined;
    const reply = await within(
      Promise.race([answer, stray.promise.then((error) => void (strayed = error))]),
      how.limit,
    );
    replies.delete(id);
    if (typeof reply === "object") await untilQuiet(id, how.expectedOutputs ?? 0, reply);
    // one that came while the outputs were awaited
    strayed ??= await Promise.race([stray.promise, Promise.resolve(undefined)]);
    const messages = inbox.messages.filter((message) => message.parent.msg_id === id);
    if (typeof reply === "object" && !messages.some(isIdle)) {
      inbox.faults.push("the end of the cell's outputs did not arrive");
    }
    return {
      status: strayed !== undefined ? "stray" : statusOf(reply),
      reply: typeof reply === "object" ? reply.content : {},
      messages,
      faults: inbox.faults.splice(0),
      stray: strayed,
      lastWords: reply === "died" ? program.lastWords() : undefined,
    };
  }

  function send(code: string, silent: boolean): ReturnType<typeof request> {
    return request("execute_request", {
      code,
      silent,
      "store_history": !silent,
      "user_expressions": {},
      "allow_stdin": false,
      "stop_on_error": true,
    });
  }

  /** Listens until the cell is idle, its outputs are there and nothing has come for a while. */
  async function untilQuiet(id: string, expected: number, reply: WireMessage): Promise<void> {
    const replied = performance.now();
    while (!program.hasEnded()) {
      const now = performance.now();
      const own = inbox.messages.filter((message) => message.parent.msg_id === id);
      const idle = own.some(isIdle);
      const shown = own.filter((message) => SHOWN.has(message.header.msg_type ?? "")).length;
      const complete = idle && (shown >= expected || reply.content.status !== "ok");
      if (complete && now - Math.max(inbox.lastArrival, replied) >= QUIET) return;
      if (now - Math.max(inbox.lastArrival, replied) >= (idle ? LATE : NEVER)) return;
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

const isIdle = (message: WireMessage): boolean => message.content.execution_state === "idle";

function statusOf(reply: WireMessage | "hung" | "died" | undefined | void): Execution["status"] {
  if (typeof reply !== "object") return reply ?? "stray";
  return reply.content.status === "ok" ? "ok" : "error";
}
