/** The speeds that a depth goes by, for its message. */
import type { SpeedUsed } from "../analysis/speed-used.ts";
import type { SpeedsSaid } from "./catalog/depths.ts";

/** The speed used, and the one on top where the water runs otherwise there. */
export function speedsOf({ value, onTop, depthM, byCurrent }: SpeedUsed): SpeedsSaid {
  const atM = byCurrent?.depthM ?? depthM;
  const other = onTop === undefined || atM === undefined ? undefined : { speedMS: onTop.value, depthM: atM };
  return { speedMS: value, onTop: other };
}
