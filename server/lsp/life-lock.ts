/** A lock that tells of a worker's end. */
/// <reference lib="webworker" />

/** Takes a lock that comes free when this worker ends, however it ends. Its name; null where there are no locks. */
export function takeLifeLock(): Promise<string | null> {
  // Only pages that came over a safe connection have them.
  if (!("locks" in navigator)) return Promise.resolve(null);
  const name = `deepwake-server-${crypto.randomUUID()}`;
  return new Promise((resolve) => {
    const hold = (): Promise<never> => {
      resolve(name);
      return new Promise(() => undefined);
    };
    navigator.locks.request(name, hold).catch(() => resolve(null));
  });
}
