/** The headers with what can be said of building them in their pit. @module */
import { buildNotices } from "./buildable.ts";
import { headersChapter } from "./compute.ts";
import { fieldPit } from "./in_ground.ts";
import { pitNotices } from "./pit_notices.ts";
import type { HeadersTaken } from "./takes.ts";
import type { HeadersResult } from "./types.ts";

/** Solves the headers of a field and adds the notices of their ends and of the pit. */
export function headersInPit({ inputs, tubes, state, ground }: HeadersTaken): HeadersResult {
  const result = headersChapter(inputs, tubes, state);
  const field = { tubes, slope: ground.slope, headers: inputs };
  const notices = [
    ...result.notices,
    ...buildNotices(field),
    ...pitNotices(fieldPit(field), ground.house, ground.direction),
  ];
  return { ...result, notices };
}
