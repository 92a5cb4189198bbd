/** The store's request of a whole study. */
import { COMPUTATIONS } from "../../lib/study/chapters.ts";
import { startRun, type Study } from "../../lib/study/mod.ts";
import type { StoreRequest } from "../../lib/store/site.ts";

/**
 * The store's request of a study, its earlier chapters computed.
 *
 * @param slices along the tubes; the study's own unless given
 */
export async function requestOf(study: Study, slices?: number): Promise<StoreRequest> {
  const run = startRun(study, { cacheFolder: null });
  const [soil, tubes, headers, fan] = await Promise.all([
    run.soil(),
    run.tubes(),
    run.headers(),
    run.fan(),
  ]);
  const store = { ...study.store, slices: slices ?? study.store.slices };
  return COMPUTATIONS.get("store")!.takes({ ...study, store }, { soil, tubes, headers, fan });
}
