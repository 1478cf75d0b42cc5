/** Opens the hosted editor in Chromium and lets a program drive the page as a person would. */
import { createRequire } from "node:module";
import { basename, join } from "node:path";
import type { EditorHost } from "./install-host.ts";

/** The parts of the browser library's page that are used here; the library is no dependency of the product. */
export interface Page {
  exposeFunction(name: string, callback: (...args: unknown[]) => unknown): Promise<void>;
  goto(url: string): Promise<unknown>;
  addInitScript<Argument>(script: (argument: Argument) => void, argument: Argument): Promise<unknown>;
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
  newPage(options: {
    viewport: { width: number; height: number };
    deviceScaleFactor: number;
    bypassCSP: boolean;
  }): Promise<Page>;
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
  // The workbench's page may load from its own server alone, and an extension under development comes from another.
  const page = await browser.newPage({ viewport, deviceScaleFactor: size.scale, bypassCSP: true });
  return { page, close: () => browser.close() };
}

/** What the hosted editor opens with; paths are absolute. */
export interface WorkbenchOptions {
  readonly port: number;
  readonly workspaceFolder: string | undefined;
  readonly extensionFolder: string;
  readonly testModule: string;
  /** The address that both are served from to a browser; there they run in its worker instead of on the server. */
  readonly servedFrom?: string;
}

/** Below which names a browser is served the extension's folder and, as if in it, that of its tests. */
export const servedNames = { extension: "/extension", tests: "/extension/.tests" } as const;

/** The address that shows the workbench with the extension under development loaded, and its tests started. */
export function workbenchAddress(options: WorkbenchOptions): string {
  const remote = (path: string): string => `vscode-remote://localhost:${options.port}${path}`;
  const { servedFrom, extensionFolder, testModule } = options;
  const payload =
    servedFrom === undefined
      ? [
          ["extensionDevelopmentPath", remote(extensionFolder)],
          ["extensionTestsPath", remote(testModule)],
        ]
      : [
          ["extensionDevelopmentPath", servedFrom + servedNames.extension],
          ["extensionTestsPath", `${servedFrom}${servedNames.tests}/${basename(testModule)}`],
          ["extensionDevelopmentKind", "web"],
        ];
  payload.push(["skipWelcome", "true"]);
  const query = new URLSearchParams();
  if (options.workspaceFolder !== undefined) query.set("folder", options.workspaceFolder);
  query.set("payload", JSON.stringify(payload));
  return `http://localhost:${options.port}/?${query}`;
}

/** Has the workbench load an extension under development from elsewhere, as the places do that serve it to a browser. */
export async function developFrom(page: Page, servedFrom: string): Promise<void> {
  const { host } = new URL(servedFrom);
  const extension = { scheme: "http", authority: host, path: servedNames.extension };
  await page.addInitScript((developed) => {
    // The workbench reads its options from an attribute of its page.
    const { getAttribute } = Element.prototype;
    Element.prototype.getAttribute = function (name) {
      const value = getAttribute.call(this, name);
      if (this.id !== "vscode-workbench-web-configuration" || value === null) return value;
      const options = JSON.parse(value);
      const developmentOptions = { ...options.developmentOptions, extensions: [developed] };
      return JSON.stringify({ ...options, developmentOptions });
    };
  }, extension);
}
