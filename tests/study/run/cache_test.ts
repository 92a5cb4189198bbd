import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import { diskCache } from "winterground/study/run/cache.ts";
import { hashOf } from "winterground/study/run/hash.ts";
import { inTemporary } from "../../harness/in_temporary.ts";

Deno.test("diskCache() gives back typed arrays, nulls and nested data as they were", async () => {
  // Property: inverse of inverse
  await inTemporary(async (folder) => {
    const value = {
      hours: new Float64Array([1.5, -0, NaN, Infinity]),
      none: null,
      parts: [{ name: "a", list: [1, 2] }],
    };
    let computed = 0;
    const get = () => diskCache(folder).get("key", () => (computed++, value));
    await get();
    assertEquals(await get(), value);
    assertEquals(computed, 1);
  });
});

Deno.test("diskCache() computes a damaged, cut or empty entry again", async () => {
  // Property: what was stored is either whole or not used
  await inTemporary(async (folder) => {
    const cache = diskCache(folder);
    const path = `${folder}/key/result.bin`;
    for (
      const damage of [
        (bytes: Uint8Array) => bytes.fill(7, bytes.length - 3),
        (bytes: Uint8Array) => bytes.subarray(0, bytes.length / 2),
        () => new Uint8Array(),
      ]
    ) {
      await cache.get("key", () => ({ value: new Float64Array(100).fill(3) }));
      await Deno.writeFile(path, damage(await Deno.readFile(path)));
      let again = false;
      const result = await cache.get("key", () => {
        again = true;
        return { value: new Float64Array(100).fill(4) };
      });
      assert(again);
      assertEquals(result.value[0], 4);
      await Deno.remove(path);
    }
  });
});

Deno.test("diskCache() computes an entry again that was copied from another key", async () => {
  // Property: an entry answers the key it was made for and no other
  await inTemporary(async (folder) => {
    const cache = diskCache(folder);
    await cache.get("one", () => "first");
    await Deno.mkdir(`${folder}/two`);
    await Deno.copyFile(`${folder}/one/result.bin`, `${folder}/two/result.bin`);
    assertEquals(await cache.get("two", () => "second"), "second");
    assertEquals(await cache.get("one", () => "again"), "first");
  });
});

Deno.test("diskCache() keeps no more entries than it may and leaves no part files", async () => {
  // Property: bounded
  await inTemporary(async (folder) => {
    const cache = diskCache(folder, { entries: 3, bytes: 1e9 });
    for (let entry = 0; entry < 8; entry++) await cache.get(`key${entry}`, () => entry);
    const names = [...Deno.readDirSync(folder)].map(({ name }) => name);
    assertEquals(names.length, 3);
    assert(names.includes("key7"));
    const small = diskCache(folder, { entries: 99, bytes: 20_000 });
    for (let entry = 0; entry < 5; entry++) {
      await small.get(`big${entry}`, () => new Float64Array(1000));
    }
    assertEquals([...Deno.readDirSync(folder)].filter(({ name }) => /^big/.test(name)).length, 2);
  });
});

Deno.test("diskCache() stores nothing when the computation fails", async () => {
  // Property: an error is not a result
  await inTemporary(async (folder) => {
    const cache = diskCache(folder);
    let failed = false;
    await cache.get("key", () => {
      throw new Error("no");
    }).catch(() => failed = true);
    assert(failed);
    assertEquals(await cache.get("key", () => 5), 5);
  });
});

Deno.test("hashOf() depends on every value and on nothing else", () => {
  // Property: key order does not matter, any changed value does
  assertEquals(hashOf({ a: 1, b: [2, "x"] }), hashOf({ b: [2, "x"], a: 1 }));
  assert(hashOf({ a: 1 }) !== hashOf({ a: "1" }));
  assert(hashOf([1, 2], 3) !== hashOf([1], 2, 3));
  assert(hashOf({ a: null }) !== hashOf({}));
  fc.assert(
    fc.property(
      fc.float64Array({ minLength: 1, maxLength: 20, noNaN: true }),
      fc.nat(),
      (numbers, place) => {
        const other = numbers.slice();
        const index = place % other.length;
        other[index] = other[index]! === 0 ? 1 : -other[index]!;
        assert(hashOf({ numbers }) !== hashOf({ numbers: other }));
        assertEquals(hashOf({ numbers }), hashOf({ numbers: numbers.slice() }));
      },
    ),
    { seed: 1 },
  );
});

Deno.test("diskCache() removes pieces of dead runs, and leaves fresh pieces and other files alone", async () => {
  // Property: what a killed run left does not stay; what another is writing does
  await inTemporary(async (folder) => {
    const [dead, fresh] = [`${crypto.randomUUID()}.part`, `${crypto.randomUUID()}.part`];
    for (const name of [dead, fresh, "notes.part"]) {
      await Deno.writeTextFile(`${folder}/${name}`, "");
    }
    const yesterday = new Date(Date.now() - 86_400_000);
    for (const name of [dead, "notes.part"]) {
      await Deno.utime(`${folder}/${name}`, yesterday, yesterday);
    }
    assertEquals(await diskCache(folder).get("key", () => 7), 7);
    const left = [...Deno.readDirSync(folder)].map(({ name }) => name).sort();
    assertEquals(left, [fresh, "key", "notes.part"].sort());
  });
});
