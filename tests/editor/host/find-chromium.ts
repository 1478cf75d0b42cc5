/** Finds the browser that shows the hosted editor. */
import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";

/** What to tell someone whose machine has no browser for the tests. */
export const howToGetChromium =
  "Install Chromium (on Debian and Ubuntu: apt-get install chromium), or name one: CHROMIUM=/path/to/chromium.";

const programNames = ["chromium", "chromium-browser", "google-chrome-stable", "google-chrome"];

/** Answers the path of a Chromium, or `undefined`: the one that `CHROMIUM` names, else the first found on PATH. */
export function findChromium(env: NodeJS.ProcessEnv): string | undefined {
  const named = env.CHROMIUM;
  if (named !== undefined && named !== "") {
    return isExecutable(named) ? named : undefined;
  }
  const folders = [...(env.PATH ?? "").split(delimiter), "/usr/bin"].filter((folder) => folder !== "");
  return folders.flatMap((folder) => programNames.map((name) => join(folder, name))).find(isExecutable);
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
