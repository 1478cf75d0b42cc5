/** Files on disk and files that only the client reaches, side by side in one workspace. */
import type { ServerWorld } from "./server-world.ts";

/** Asks `disk` about files on disk and `client` about all others; only what is on disk is indexed. */
export function mixedWorld(disk: ServerWorld, client: ServerWorld): ServerWorld {
  let isOnDisk = true;
  const worldOf = (uri: string): ServerWorld =>
    uri.startsWith("file:") || (uri.startsWith("untitled:") && isOnDisk) ? disk : client;
  return {
    // The index, the day and whatever else the disk's world has; what is told apart by address follows.
    ...disk,
    booksNear: (uri) => worldOf(uri).booksNear(uri),
    ready: (uri) => worldOf(uri).ready?.(uri),
    setRoots: (uris) => {
      isOnDisk = uris.every((uri) => uri.startsWith("file:"));
      for (const world of [disk, client]) world.setRoots(uris);
    },
    forgetFiles: () => {
      for (const world of [disk, client]) world.forgetFiles();
    },
  };
}
