import { assertEquals } from "@std/assert";
import { studyJsonSchemaText } from "winterground/study/file/json_schema.ts";

Deno.test("docs/study.schema.json is up to date with the schema", async () => {
  // Property: published schema = generated schema; write it with: deno run -A lib/study/json_schema.ts
  const published = await Deno.readTextFile(
    new URL("../../../docs/study.schema.json", import.meta.url),
  );
  assertEquals(published, studyJsonSchemaText());
});
