/** The language server in Node, on the transport its arguments name (`--stdio`, `--node-ipc`, `--socket=N`). */
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { useProcessClock } from "../files/process-offset.ts";
import { clientWorld, filesOf } from "./client-world.ts";
import { connect } from "./connect.ts";
import { diskWorld } from "./disk-world.ts";
import { gateMessages } from "./message-gate.ts";
import { mixedWorld } from "./mixed-world.ts";

/** Serves until the client says goodbye. */
export function serve(): void {
  useProcessClock(process.env);
  const connection = createConnection(ProposedFeatures.all, gateMessages());
  connect(connection, mixedWorld(diskWorld(), clientWorld(filesOf(connection))));
}
