/** That a server whose process ends by itself comes back, and knows what is open. A worker has no process to end. */
import { execFileSync } from "node:child_process";
import assert from "./assert.ts";
import { answerWhen, diagnosticsWhen, openJournal, replaceText } from "./open-editor.ts";
import type { EditorTest } from "./runner.ts";

/** The server's process, a child of this extension host; undefined while there is none. */
function serverProcess(): number | undefined {
  const processes = execFileSync("ps", ["-eo", "pid=,ppid=,args="], { encoding: "utf8" }).split("\n");
  const [pid] = processes
    .map((line) => /^\s*(\d+)\s+(\d+)\s+(.*)$/u.exec(line) ?? [])
    .filter(([, , parent, command]) => Number(parent) === process.pid && command?.includes("dist/server.cjs"))
    .map(([, child]) => Number(child));
  return pid;
}

export const killedTests: readonly EditorTest[] = [
  {
    name: "a server that is killed comes back with the marks",
    async run() {
      if (process.platform === "win32") return "left out on this system";
      const document = await openJournal("slips.trip");
      const killed = serverProcess();
      assert.ok(killed !== undefined, "no server process was found");
      process.kill(killed, "SIGKILL");
      const fresh = async (): Promise<number | undefined> => serverProcess();
      const next = await answerWhen("no new server", fresh, (pid) => pid !== undefined && pid !== killed);
      assert.notEqual(next, killed);
      await replaceText(document, "72,5", "7,25");
      await diagnosticsWhen(document, (all) => all.some(({ range }) => document.getText(range) === "7,25"));
      await replaceText(document, "7,25", "72,5");
      return undefined;
    },
  },
];
