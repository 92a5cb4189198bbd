import { assertEquals, assertMatch } from "@std/assert";
import { timeLeft } from "winterground/commands/time_left.ts";

Deno.test("timeLeft() goes by the pieces that took time, and says nothing too early or at the end", () => {
  // Property: twice the speed leaves half the time
  for (const [speed, seconds] of [[1, 7], [2, 4]] as const) {
    let clock = 0;
    const left = timeLeft(["house", "store", "ways", "01-climate"], () => clock);
    assertEquals(left.text(), "");
    left.done("house", true); // was there already
    clock = 11 / speed;
    left.done("store");
    assertMatch(left.text(), /^, about \d+ s left$/);
    // ways 6 and a notebook 1.5 are left
    assertEquals(Math.abs(Number(/\d+/.exec(left.text())![0]) - seconds) <= 1, true, left.text());
    left.done("ways");
    left.done("01-climate");
    assertEquals(left.text(), "");
  }
});

Deno.test("timeLeft() counts the parts of a long piece once most of them are asked for", () => {
  // Property: halfway through a piece that is all there is, as much is left as was spent
  let clock = 0;
  const left = timeLeft(["odds", "store"], () => clock);
  left.done("store", true);
  clock = 2;
  assertEquals(left.part("odds", 1, 2), false);
  assertEquals(left.text(), "");
  clock = 40;
  assertEquals(left.part("odds", 8, 16), true);
  assertEquals(left.text(), ", about 40 s left");
  assertEquals(left.part("store", 8, 16), false);
  left.done("odds");
  assertEquals(left.text(), "");
});
