/** Opens the hosted editor in Chromium and lets a program drive the page as a person would. */
import { createRequire } from "node:module";
import { join } from "node:path";
import type { EditorHost } from "./install-host.ts";

/** The parts of the browser library's page that are used here; the library is no dependency of the product. */
export interface Page {
  exposeFunction(name: string, callback: (...args: unknown[]) => unknown): Promise<void>;
  goto(url: string): Promise<unknown>;
  screenshot(options: { path: string }): Promise<unknown>;
  locator(selector: string): Locator;
  on(event: "crash", listener: () => void): unknown;
  readonly mouse: { move(x: number, y: number, options?: { steps: number }): Promise<void> };
}

/** A way to find elements on the page. */
export interface Locator {
  first(): Locator;
  count(): Promise<number>;
  allInnerTexts(): Promise<string[]>;
  waitFor(options: { state: "visible" | "hidden"; timeout: number }): Promise<void>;
  boundingBox(): Promise<{ x: number; y: number; width: number; height: number } | null>;
}

/** An open browser with its one page. */
export interface OpenBrowser {
  readonly page: Page;
  close(): Promise<void>;
}

interface Browser {
  newPage(options: { viewport: { width: number; height: number }; deviceScaleFactor: number }): Promise<Page>;
  close(): Promise<void>;
}

interface BrowserLibrary {
  readonly chromium: {
    launch(options: {
      executablePath: string;
      headless: boolean;
      args: string[];
      handleSIGINT: boolean;
      handleSIGTERM: boolean;
    }): Promise<Browser>;
  };
}

/** The page's size in CSS pixels, and how many device pixels a CSS pixel has. */
export interface PageSize {
  readonly width: number;
  readonly height: number;
  readonly scale: number;
}

/** Flags that let the browser run as root without a display, and keep it from looking anything up on a network. */
const chromiumFlags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** Starts Chromium with an empty profile and one empty page. */
export async function openBrowser(
  host: EditorHost,
  chromiumPath: string,
  size: PageSize,
): Promise<OpenBrowser> {
  const requireFromHost = createRequire(join(host.folder, "package.json"));
  const library = requireFromHost("playwright-core") as BrowserLibrary;
  const browser = await library.chromium.launch({
    executablePath: chromiumPath,
    headless: true,
    args: chromiumFlags,
    // The caller ends the browser itself, and the server with it.
    handleSIGINT: false,
    handleSIGTERM: false,
  });
  const viewport = { width: size.width, height: size.height };
  const page = await browser.newPage({ viewport, deviceScaleFactor: size.scale });
  return { page, close: () => browser.close() };
}

/** What the hosted editor opens with; paths are absolute. */
export interface WorkbenchOptions {
  readonly port: number;
  readonly workspaceFolder: string | undefined;
  readonly extensionFolder: string;
  readonly testModule: string;
}

/** The address that shows the workbench with the extension under development loaded, and its tests started. */
export function workbenchAddress(options: WorkbenchOptions): string {
  const remote = (path: string): string => `vscode-remote://localhost:${options.port}${path}`;
  const payload = [
    ["extensionDevelopmentPath", remote(options.extensionFolder)],
    ["extensionTestsPath", remote(options.testModule)],
    ["skipWelcome", "true"],
  ];
  const query = new URLSearchParams();
  if (options.workspaceFolder !== undefined) query.set("folder", options.workspaceFolder);
  query.set("payload", JSON.stringify(payload));
  return `http://localhost:${options.port}/?${query}`;
}
