import { assert, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { decodeMessage, encodeMessage, newRequest, signature } from "winterground/press/wire.ts";

const bytes = (frames: readonly string[]) => frames.map((frame) => new TextEncoder().encode(frame));

Deno.test("signature() gives the HMAC-SHA256 of RFC 4231 test case 2, split over frames", () => {
  // Source: RFC 4231 (2005) [rfc-4231-2005], section 4.3, test case 2; exact
  const expected = "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843";
  assertEquals(signature("Jefe", ["what do ya want ", "for ", "nothing", "?"]), expected);
  assertEquals(signature("Jefe", ["what do ya want for nothing?"]), expected);
});

Deno.test("signature() is empty without a key, as messages may then stay unsigned", () => {
  // Source: Jupyter client documentation [jupyter-messaging-web], "Messaging in Jupyter" 5.3, "The
  // wire protocol"
  assertEquals(signature("", ["a"]), "");
});

Deno.test("decodeMessage() gives back what encodeMessage() took, whatever routing frames precede", () => {
  // Property: inverse of inverse
  fc.assert(
    fc.property(
      fc.string(),
      fc.array(fc.string()),
      fc.string({ minLength: 1 }),
      (text, ids, key) => {
        fc.pre(!ids.includes("<IDS|MSG>"));
        const message = newRequest("execute_request", { code: text }, "s");
        const frames = bytes([...ids, ...encodeMessage(key, message)]);
        assertEquals(decodeMessage(key, frames), message);
      },
    ),
    { numRuns: 50 },
  );
});

Deno.test("decodeMessage() refuses every message with a changed frame", () => {
  // Property: one changed byte in a signed frame changes the signature
  const frames = encodeMessage("key", newRequest("execute_request", { code: "1" }, "s"));
  for (let index = 1; index < frames.length; index++) {
    const changed = [...frames];
    changed[index] = changed[index]!.replace(/[0-9a-z]/, (sign) => sign === "7" ? "8" : "7");
    assert(changed[index] !== frames[index] || frames[index] === "{}");
    if (frames[index] === "{}") changed[index] = '{"a":1}';
    assertThrows(() => decodeMessage("key", bytes(changed)), Error, "wrong signature");
  }
  assertThrows(() => decodeMessage("key", bytes(frames.slice(0, 4))), Error, "cut short");
  assertThrows(() => decodeMessage("key", bytes(frames.slice(1))), Error, "no delimiter");
});
