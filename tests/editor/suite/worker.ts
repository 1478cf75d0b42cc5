/** That these tests do run in a browser's worker: without it the suite would show nothing about the web. */

import * as vscode from "vscode";
import assert from "./assert.ts";
import type { EditorTest } from "./runner.ts";

export const workerTests: readonly EditorTest[] = [
  {
    name: "the extension runs in a browser's worker, on a workspace that is on no disk of its own",
    async run() {
      assert.equal(vscode.env.uiKind, vscode.UIKind.Web);
      assert.equal(Reflect.get(globalThis, "process")?.versions?.node, undefined);
      assert.ok("WorkerGlobalScope" in globalThis, "this is no worker");
      const [folder] = vscode.workspace.workspaceFolders ?? [];
      assert.notEqual(folder?.uri.scheme, "file");
    },
  },
];
