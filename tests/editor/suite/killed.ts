/** That a server whose process ends by itself comes back, and knows what is open. */
import { execFileSync } from "node:child_process";
import assert from "./assert.ts";
import { givenUpInTheEnd, typedOutlives } from "./comes-back.ts";
import { answerWhen } from "./open-editor.ts";
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

/** Kills the server's process, and answers when it is gone. */
async function kill(): Promise<void> {
  const ask = async (): Promise<number | undefined> => serverProcess();
  const killed = await answerWhen("no server process", ask, (pid) => pid !== undefined);
  assert.ok(killed !== undefined, "no server process was found");
  process.kill(killed, "SIGKILL");
  await answerWhen("the process stayed", ask, (pid) => pid !== killed);
}

const isElsewhere = process.platform === "win32";

export const killedTests: readonly EditorTest[] = [
  {
    name: "a server that is killed comes back, and knows what was typed and not saved",
    async run() {
      if (isElsewhere) return "left out on this system";
      await typedOutlives(async () => {
        await kill();
        const next = async (): Promise<number | undefined> => serverProcess();
        await answerWhen("no new server", next, (pid) => pid !== undefined);
      });
      return undefined;
    },
  },
  {
    name: "a server that is killed again and again is given up, the captain is told, and can start it again",
    async run() {
      if (isElsewhere) return "left out on this system";
      await givenUpInTheEnd(async () => {
        await kill();
        return () => serverProcess() !== undefined;
      });
      return undefined;
    },
  },
];
