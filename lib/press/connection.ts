// deno-lint-ignore-file camelcase -- the names of the connection file
/**
 * Where a kernel listens: five free ports on loopback and a fresh key, written to a file only the
 * user can read.
 *
 * @module
 */

/** Content of a connection file. */
export interface Connection {
  /** kind of connection */
  readonly transport: "tcp";
  /** address, loopback only */
  readonly ip: "127.0.0.1";
  /** requests and replies */
  readonly shell_port: number;
  /** outputs */
  readonly iopub_port: number;
  /** questions to the user, not used */
  readonly stdin_port: number;
  /** interrupt and shutdown, not used */
  readonly control_port: number;
  /** heartbeat, not used */
  readonly hb_port: number;
  /** key of the signatures */
  readonly key: string;
  /** how messages are signed */
  readonly signature_scheme: "hmac-sha256";
  /** name of the kernel */
  readonly kernel_name: string;
}

/** `count` loopback ports that were free a moment ago. */
function freePorts(count: number): number[] {
  const listeners = Array.from(
    { length: count },
    () => Deno.listen({ hostname: "127.0.0.1", port: 0 }),
  );
  const ports = listeners.map((listener) => (listener.addr as Deno.NetAddr).port);
  for (const listener of listeners) listener.close();
  return ports;
}

/** A connection with fresh ports and a fresh random key. */
export function newConnection(): Connection {
  const [shell, iopub, stdin, control, heartbeat] = freePorts(5);
  return {
    transport: "tcp",
    ip: "127.0.0.1",
    shell_port: shell!,
    iopub_port: iopub!,
    stdin_port: stdin!,
    control_port: control!,
    hb_port: heartbeat!,
    key: crypto.randomUUID(),
    signature_scheme: "hmac-sha256",
    kernel_name: "deno",
  };
}

/** Writes the connection file, readable by this user alone; gives its path. */
export async function writeConnectionFile(connection: Connection): Promise<string> {
  const path = await Deno.makeTempFile({ prefix: "winterground-kernel-", suffix: ".json" });
  await Deno.writeTextFile(path, JSON.stringify(connection), { mode: 0o600 });
  return path;
}
