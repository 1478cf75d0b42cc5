/** Decides in which editor the tests run on this machine. */
import { downloadAndUnzipVSCode } from "@vscode/test-electron";
import { findChromium, howToGetChromium } from "./host/find-chromium.ts";

/** An editor to run the tests in: what a person calls it, and the executable to start. */
export interface ChosenHost {
  readonly name: string;
  readonly executable: string;
}

const browserLauncher = new URL("./host/launch-browser-host.ts", import.meta.url).pathname;

/**
 * Answers the first that can be had: the editor that `DEEPWAKE_EDITOR` names; on a machine with a screen, a desktop
 * editor (downloaded once and kept); with Chromium, the browser-hosted editor. It throws, saying what would help,
 * when there is none. A machine without a screen is never made to wait for a download.
 */
export async function chooseHost(env: NodeJS.ProcessEnv): Promise<ChosenHost> {
  const named = env.DEEPWAKE_EDITOR;
  if (named !== undefined && named !== "") return { name: `the editor at ${named}`, executable: named };
  const desktop = hasScreen(env) ? await downloadDesktop() : undefined;
  if (desktop !== undefined) return { name: "a desktop editor", executable: desktop };
  if (process.platform === "linux" && findChromium(env) !== undefined) {
    return { name: "the browser-hosted editor", executable: browserLauncher };
  }
  throw new Error(
    "No editor can be had to run the tests in. Name an installed desktop editor (DEEPWAKE_EDITOR=/path/to/its " +
      `executable), run on a machine with a screen and a network, or use the browser-hosted one. ${howToGetChromium}`,
  );
}

function hasScreen(env: NodeJS.ProcessEnv): boolean {
  return process.platform !== "linux" || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
}

async function downloadDesktop(): Promise<string | undefined> {
  try {
    return await downloadAndUnzipVSCode({ timeout: 15_000 });
  } catch (error) {
    console.log(`No desktop editor could be downloaded: ${error instanceof Error ? error.message : error}`);
    return undefined;
  }
}
