#!/usr/bin/env node
/**
 * Stands in for a desktop editor's executable: takes the arguments that a test run passes to one, plays them into
 * the browser-hosted editor, prints what the tests print, and ends with the tests' exit code.
 */
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { findChromium, howToGetChromium } from "./find-chromium.ts";
import { installHost } from "./install-host.ts";
import { developFrom, openBrowser, type Page, servedNames, workbenchAddress } from "./open-page.ts";
import { type FolderServer, serveFolders } from "./serve-folders.ts";
import { startServer } from "./start-server.ts";

/** How long one round of tests may take before it counts as hung. */
const roundBoundMs = 600_000;

/** The arguments that matter here; the rest (sandbox and update flags of a desktop editor) have no meaning. */
interface LaunchArguments {
  readonly extensionFolder: string;
  readonly testModule: string;
  readonly profileFolder: string;
  readonly extensionsFolder: string;
  readonly workspaceFolder: string | undefined;
  readonly trustEverything: boolean;
  readonly isWeb: boolean;
}

function readArguments(args: readonly string[]): LaunchArguments {
  const value = (name: string): string | undefined =>
    args.find((arg) => arg.startsWith(`--${name}=`))?.slice(name.length + 3);
  const path = (name: string): string => {
    const found = value(name);
    if (found === undefined) throw new Error(`--${name}=PATH is missing.`);
    return resolve(found);
  };
  const folder = args.find((arg) => !arg.startsWith("-"));
  return {
    extensionFolder: path("extensionDevelopmentPath"),
    testModule: path("extensionTestsPath"),
    profileFolder: resolve(value("user-data-dir") ?? join(tmpdir(), `deepwake-profile-${process.pid}`)),
    extensionsFolder: resolve(
      value("extensions-dir") ?? join(tmpdir(), `deepwake-extensions-${process.pid}`),
    ),
    workspaceFolder: folder === undefined ? undefined : resolve(folder),
    trustEverything: args.includes("--disable-workspace-trust"),
    isWeb: value("extensionDevelopmentKind") === "web",
  };
}

/** Runs one round and answers the exit code that the extension host reports. */
async function launch(args: LaunchArguments): Promise<number> {
  const chromium = findChromium(process.env);
  if (chromium === undefined) throw new Error(`There is no Chromium here. ${howToGetChromium}`);
  const host = installHost(console.log);
  const server = await startServer(host, args);
  try {
    const browser = await openBrowser(host, chromium, { width: 1280, height: 800, scale: 1 });
    const served = args.isWeb ? await serveExtension(args) : undefined;
    const where = served === undefined ? {} : { servedFrom: served.address };
    try {
      if (served !== undefined) await developFrom(browser.page, served.address);
      return await playRound(browser.page, workbenchAddress({ port: server.port, ...args, ...where }));
    } finally {
      served?.stop();
      await browser.close();
    }
  } finally {
    await server.stop();
  }
}

/** A browser's editor starts no worker from a folder of its server: the extension comes from another place. */
function serveExtension({ testModule, extensionFolder }: LaunchArguments): Promise<FolderServer> {
  return serveFolders({
    [servedNames.tests]: dirname(testModule),
    [servedNames.extension]: extensionFolder,
  });
}

/** Opens the workbench and waits for the exit code, a crash, the bound, or a signal to end, whichever is first. */
function playRound(page: Page, address: string): Promise<number> {
  return new Promise((resolve, reject) => {
    const fail = (reason: string): void => reject(new Error(reason));
    setTimeout(() => fail("The tests did not end in time."), roundBoundMs).unref();
    for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => fail(`Stopped by ${signal}.`));
    page.on("crash", () => fail("The editor's page crashed."));
    const open = async (): Promise<void> => {
      await page.exposeFunction("codeAutomationLog", printLog);
      await page.exposeFunction("codeAutomationExit", (code) => resolve(Number(code)));
      await page.goto(address);
    };
    open().catch(reject);
  });
}

/**
 * Prints one log entry of the page, which comes as a severity and the console call's arguments: its first line, since
 * what follows is the editor's own stack, and long.
 */
function printLog(severity: unknown, args: unknown): void {
  const text = (Array.isArray(args) ? args : [args]).map(String).join(" ");
  console.log(`[${severity}] ${text.split("\n", 1)[0]}`);
}

try {
  process.exitCode = await launch(readArguments(process.argv.slice(2)));
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
}
