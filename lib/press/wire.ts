// deno-lint-ignore-file camelcase -- the names of the messaging protocol
/**
 * Messages of the Jupyter messaging protocol 5.3 as frames on the wire, signed with HMAC-SHA256.
 *
 * Frames of one message: routing prefixes, the delimiter, the signature in hex, then header,
 * parent header, metadata and content as JSON text, then raw buffers. The signature covers the
 * four JSON frames in this order.
 *
 * Source: Jupyter client documentation [jupyter-messaging-web], "Messaging in Jupyter", protocol
 * version 5.3, section "The wire protocol".
 *
 * @module
 */
import { createHmac, timingSafeEqual } from "node:crypto";
import { Buffer } from "node:buffer";

/** Frame that separates routing prefixes from the message. */
const DELIMITER = "<IDS|MSG>";

/** Version of the messaging protocol spoken here. */
const PROTOCOL_VERSION = "5.3";

/** Head of a message; empty for "no parent". */
export interface MessageHeader {
  /** identity of this message */
  readonly msg_id?: string;
  /** kind of message, such as "execute_request" */
  readonly msg_type?: string;
  /** identity of the client's session */
  readonly session?: string;
  /** name of the user */
  readonly username?: string;
  /** ISO 8601 time of making */
  readonly date?: string;
  /** protocol version */
  readonly version?: string;
}

/** One message, decoded. */
export interface WireMessage {
  /** head of this message */
  readonly header: MessageHeader;
  /** head of the request this message answers */
  readonly parent: MessageHeader;
  /** free metadata */
  readonly metadata: Readonly<Record<string, unknown>>;
  /** the message itself */
  readonly content: Readonly<Record<string, unknown>>;
}

/** Signature of the four JSON frames: HMAC-SHA256 in hex; empty when the key is empty. */
export function signature(key: string, parts: readonly (string | Uint8Array)[]): string {
  if (key === "") return "";
  const code = createHmac("sha256", key);
  for (const part of parts) code.update(part);
  return code.digest("hex");
}

/** Frames of a message, ready to send. */
export function encodeMessage(key: string, message: WireMessage): string[] {
  const parts = [message.header, message.parent, message.metadata, message.content]
    .map((part) => JSON.stringify(part));
  return [DELIMITER, signature(key, parts), ...parts];
}

/**
 * Reads a message from its frames.
 *
 * @throws {Error} when the delimiter or a frame is missing, the signature is wrong, or a frame is
 * not JSON
 */
export function decodeMessage(key: string, frames: readonly Uint8Array[]): WireMessage {
  const start = frames.findIndex((frame) => Buffer.from(frame).toString("latin1") === DELIMITER);
  if (start < 0) throw new Error("Message has no delimiter");
  const [sign, ...parts] = frames.slice(start + 1, start + 6);
  if (sign === undefined || parts.length < 4) throw new Error("Message is cut short");
  const expected = Buffer.from(signature(key, parts));
  if (expected.length !== sign.length || !timingSafeEqual(expected, sign)) {
    throw new Error("Message has a wrong signature");
  }
  const [header, parent, metadata, content] = parts
    .map((part) => JSON.parse(Buffer.from(part).toString("utf8")));
  return { header, parent, metadata, content };
}

/** A fresh request of the given kind. */
export function newRequest(
  type: string,
  content: Readonly<Record<string, unknown>>,
  session: string,
): WireMessage {
  const header = {
    msg_id: crypto.randomUUID(),
    msg_type: type,
    session,
    username: "press",
    date: new Date().toISOString(),
    version: PROTOCOL_VERSION,
  };
  return { header, parent: {}, metadata: {}, content };
}
