/** That a server whose worker ends, breaks, hangs or can't be had comes back, and knows what is open. */
import * as vscode from "vscode";
import { givenUpInTheEnd, typedOutlives } from "./comes-back.ts";
import { heard } from "./messages.ts";
import { answerWhen } from "./open-editor.ts";
import type { EditorTest } from "./runner.ts";

/** Every worker that the extension made, the newest last. */
const made: Worker[] = [];
/** What the next workers are: as they should be, such that break or hang when they are told to, or not to be had. */
let next: "sound" | "breakable" | "absent" = "sound";

/** Before it is the server, it listens for being told to break or to hang. */
const breakable = (bundle: string): string => `
  addEventListener("message", (event) => {
    if (event.data === "hang") for (;;);
    if (event.data !== "break") return;
    event.stopImmediatePropagation();
    setTimeout(() => { throw new Error("broken on purpose"); });
  });
  importScripts(${JSON.stringify(bundle)});`;

/** Takes note of the workers that are made in this extension host from now on. */
export function followWorkers(): void {
  const scripts = {
    sound: (bundle: string) => bundle,
    breakable: (bundle: string) =>
      URL.createObjectURL(new Blob([breakable(bundle)], { type: "application/javascript" })),
    absent: (bundle: string) => `${bundle}.no-such-file`,
  };
  globalThis.Worker = class extends globalThis.Worker {
    constructor(script: string | URL, options?: WorkerOptions) {
      super(scripts[next](String(script)), options);
      made.push(this);
      this.addEventListener("message", ({ data }) => heard.fromServer.push(data));
      // The editor's own kind of worker is no instance of this class: what is added is added to the object.
      const { postMessage } = this;
      this.postMessage = (message: unknown, ...rest: unknown[]) => {
        heard.fromEditor.push(Object(message));
        Reflect.apply(postMessage, this, [message, ...rest]);
      };
    }
  };
}

/** Does something to the newest worker, and answers when the extension has made another. */
async function replaced(by: (worker: Worker | undefined) => unknown): Promise<void> {
  const before = made.length;
  await by(made.at(-1));
  const count = async (): Promise<number> => made.length;
  await answerWhen("no new worker", count, (now) => now > before);
}

export const lostWorkerTests: readonly EditorTest[] = [
  {
    name: "a worker that is gone without a word is replaced, and the next one knows what was typed and not saved",
    async run() {
      next = "breakable";
      await typedOutlives(() => replaced((worker) => worker?.terminate()));
    },
  },
  {
    name: "so is a worker with an error that nobody caught",
    async run() {
      await typedOutlives(() => replaced((worker) => worker?.postMessage("break")));
    },
  },
  {
    name: "the restart command replaces a worker that hangs",
    async run() {
      next = "sound";
      await typedOutlives(() =>
        replaced(async (worker) => {
          worker?.postMessage("hang");
          await vscode.commands.executeCommand("deepwake.restartServer");
        }),
      );
    },
  },
  {
    name: "a worker that can't be had any more is given up, the captain is told, and can start it again",
    async run() {
      next = "absent";
      let sound = made.at(-1);
      // Those after it end by themselves.
      const end = async (): Promise<() => boolean> => {
        const before = made.length;
        sound?.terminate();
        sound = undefined;
        return () => made.length > before;
      };
      const mend = (): void => {
        next = "sound";
      };
      await givenUpInTheEnd(end, mend);
    },
  },
];
