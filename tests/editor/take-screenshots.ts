/**
 * Photographs journals in the browser-hosted editor, in a light, a dark and a high-contrast theme:
 *
 *     npm run screenshots               the example's longest day with a hover, and the wrong day with its problems
 *     node tests/editor/take-screenshots.ts --file trips/2031-07-19.trip --hover "05:10 set" --expect "ball" \
 *       --name hover --themes light,dark
 *
 * `--workspace` names another folder than the example journal; `--hover` a text of the file, or LINE:COLUMN counted
 * from 1; `--command` a command of the editor to run first (it may be repeated); `--expect` a text that must have come
 * before the picture is taken. The pictures are written into tests/editor/screenshots/.
 */
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { readPlace, type Shot, usualShots } from "./choose-shots.ts";
import { findChromium, howToGetChromium } from "./host/find-chromium.ts";
import { type EditorHost, installHost } from "./host/install-host.ts";
import { openBrowser, type Page, workbenchAddress } from "./host/open-page.ts";
import { startServer } from "./host/start-server.ts";
import { photographSettings, type ThemeName, themeNames, themes } from "./photograph-settings.ts";
import type { Pose } from "./suite/pose.ts";
import { hoverOverCursor, whenSettled } from "./workbench-page.ts";

const projectFolder = resolve(import.meta.dirname, "..", "..");
/** The line that `suite/pose.ts` prints; that module itself can only be loaded inside an editor. */
const posedLine = "the picture is posed";
const poseBoundMs = 60_000;
const pictureFolder = join(import.meta.dirname, "screenshots");

/** What is to be photographed. */
interface Picture {
  readonly workspace: string;
  readonly file: string;
  readonly hover: Pose["cursor"];
  readonly commands: readonly string[];
  readonly expect: string | undefined;
  readonly name: string;
  readonly size: { readonly width: number; readonly height: number; readonly scale: number };
}

const { values: flags } = parseArgs({
  options: {
    workspace: { type: "string", default: join(projectFolder, "examples", "bright-penny") },
    file: { type: "string" },
    hover: { type: "string" },
    command: { type: "string", multiple: true, default: [] },
    expect: { type: "string" },
    name: { type: "string", default: "journal" },
    themes: { type: "string", default: themeNames.join(",") },
    width: { type: "string", default: "1010" },
    height: { type: "string", default: "764" },
    scale: { type: "string", default: "1.5" },
  },
});

function readTheme(name: string): ThemeName {
  const theme = themeNames.find((known) => known === name);
  if (theme === undefined) throw new Error(`There is no theme ${name}; there are ${themeNames.join(", ")}.`);
  return theme;
}

/** Takes one picture in a fresh profile, and answers its file's name. */
async function photograph(
  host: EditorHost,
  chromium: string,
  picture: Picture,
  theme: ThemeName,
): Promise<string> {
  const scratch = mkdtempSync(join(tmpdir(), "deepwake-picture-"));
  const { file, hover: cursor, commands } = picture;
  const pose: Pose = { file, cursor, commands, theme: themes[theme] };
  try {
    const workspace = join(scratch, "journal");
    const profileFolder = join(scratch, "profile");
    cpSync(picture.workspace, workspace, { recursive: true });
    mkdirSync(join(profileFolder, "User"), { recursive: true });
    writeFileSync(join(profileFolder, "User", "settings.json"), JSON.stringify(photographSettings));
    const server = await startServer(host, {
      profileFolder,
      extensionsFolder: join(scratch, "extensions"),
      trustEverything: true,
      environment: { DEEPWAKE_POSE: JSON.stringify(pose) },
    });
    try {
      const browser = await openBrowser(host, chromium, picture.size);
      try {
        const address = workbenchAddress({
          port: server.port,
          workspaceFolder: workspace,
          extensionFolder: projectFolder,
          testModule: join(projectFolder, "dist", "editor-tests", "pose.cjs"),
        });
        await openPosed(browser.page, address);
        await whenSettled(browser.page, picture.expect);
        if (picture.hover !== undefined) await hoverOverCursor(browser.page);
        const name = `${picture.name}-${theme}.png`;
        await browser.page.screenshot({ path: join(pictureFolder, name) });
        return name;
      } finally {
        await browser.close();
      }
    } finally {
      await server.stop();
    }
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

/** Opens the workbench and waits until the module inside it says that everything is in place. */
function openPosed(page: Page, address: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const log: string[] = [];
    const fail = (reason: string): void => reject(new Error(`${reason}\n${log.slice(-20).join("\n")}`));
    setTimeout(() => fail("The editor did not take its pose in time."), poseBoundMs).unref();
    for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => fail(`Stopped by ${signal}.`));
    const open = async (): Promise<void> => {
      await page.exposeFunction("codeAutomationLog", (_severity, args) => {
        // The first line of an entry says enough; what follows is the editor's own stack.
        log.push(String(args).split("\n", 1)[0] ?? "");
        if (log.at(-1)?.includes(posedLine)) resolve();
      });
      await page.exposeFunction("codeAutomationExit", () => fail("The editor could not take its pose."));
      await page.goto(address);
    };
    open().catch(reject);
  });
}

function askedShots(): readonly Shot[] {
  const { file, hover, command: commands, expect, name } = flags;
  return file === undefined ? usualShots : [{ file, hover, commands, expect, name }];
}

function pictureOf({ hover, ...shot }: Shot): Picture {
  const workspace = resolve(flags.workspace);
  return {
    ...shot,
    workspace,
    hover: hover === undefined ? undefined : readPlace(hover, join(workspace, shot.file)),
    size: { width: Number(flags.width), height: Number(flags.height), scale: Number(flags.scale) },
  };
}

async function takeAll(): Promise<void> {
  const chromium = findChromium(process.env);
  if (chromium === undefined) throw new Error(`There is no Chromium here. ${howToGetChromium}`);
  const pictures = askedShots().map(pictureOf);
  const themes = flags.themes.split(",").map(readTheme);
  const bundled = spawnSync(process.execPath, [join(projectFolder, "esbuild.config.ts"), "--tests"], {
    stdio: "inherit",
  });
  if (bundled.status !== 0) throw new Error("Bundling failed.");
  const host = installHost(console.log);
  mkdirSync(pictureFolder, { recursive: true });
  for (const picture of pictures) {
    for (const theme of themes)
      console.log(`tests/editor/screenshots/${await photograph(host, chromium, picture, theme)}`);
  }
}

try {
  await takeAll();
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
}
