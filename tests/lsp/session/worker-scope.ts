/**
 * Runs the server's bundle for browsers in this thread, in a context of its own: what a browser's worker offers it is
 * there, what Node offers is not. Its messages are cloned on their way, as a browser clones them.
 */
import { readFileSync } from "node:fs";
import vm from "node:vm";
import { type MessagePort, workerData } from "node:worker_threads";

const { bundle, port }: { bundle: string; port: MessagePort } = workerData;

const scope: Record<string, unknown> & { onmessage?: (event: { data: unknown }) => void } = {
  ...{ clearInterval, clearTimeout, queueMicrotask, setInterval, setTimeout, structuredClone },
  ...{ AbortController, AbortSignal, console, crypto, performance, TextDecoder, TextEncoder, URL },
  navigator: {},
  postMessage: (message: unknown) => port.postMessage(message),
  addEventListener: () => undefined,
};
scope.self = scope;

vm.runInContext(readFileSync(bundle, "utf8"), vm.createContext(scope), { filename: bundle });
port.on("message", (data) => scope.onmessage?.({ data }));
