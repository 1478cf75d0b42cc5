/** Waiting for the hosted workbench's page to come to rest, and hovering as a person would. */
import { setTimeout as pause } from "node:timers/promises";
import type { Page } from "./host/open-page.ts";

const settleBoundMs = 60_000;

/** How long the page must look the same to count as settled. */
const restMs = 1_000;

/** Waits until the text, its marks and its hints have stopped changing, and `expect` is among them when given. */
export async function whenSettled(page: Page, expect: string | undefined): Promise<void> {
  const started = performance.now();
  let last = "";
  let since = started;
  for (;;) {
    const now = await visibleState(page);
    if (now !== last) [last, since] = [now, performance.now()];
    const there = expect === undefined || now.includes(expect);
    if (there && performance.now() - since >= restMs) return;
    if (performance.now() - started > settleBoundMs) {
      throw new Error(there ? "The page did not come to rest." : `${JSON.stringify(expect)} did not show.`);
    }
    await pause(100);
  }
}

/** Moves the mouse onto the text cursor, and waits until the hover is shown and at rest. */
export async function hoverOverCursor(page: Page): Promise<void> {
  const cursor = await page.locator(".monaco-editor .cursor").first().boundingBox();
  if (cursor === null) throw new Error("The editor shows no cursor.");
  await page.mouse.move(cursor.x + 3, cursor.y + cursor.height / 2, { steps: 4 });
  const hover = page.locator(".monaco-hover .hover-contents").first();
  await hover.waitFor({ state: "visible", timeout: settleBoundMs });
  await whenSettled(page, undefined);
}

/** Everything that may still change: the lines with their hints, the marks under them, and a hover. */
async function visibleState(page: Page): Promise<string> {
  const text = await innerTexts(page, ".monaco-editor .view-lines, .monaco-hover .hover-contents");
  const marks = await page.locator(".monaco-editor [class*='squiggly-']").count();
  return `${text.replaceAll("\u00a0", " ")}\n${marks}`;
}

async function innerTexts(page: Page, selector: string): Promise<string> {
  return (await page.locator(selector).allInnerTexts()).join("\n");
}
