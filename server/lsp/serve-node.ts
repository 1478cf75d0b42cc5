/** The language server in Node, on the transport its arguments name (`--stdio`, `--node-ipc`, `--socket=N`). */
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { useProcessClock } from "../files/process-offset.ts";
import { connect } from "./connect.ts";
import { diskWorld } from "./disk-world.ts";

/** Serves until the client says goodbye. */
export function serve(): void {
  useProcessClock(process.env);
  connect(createConnection(ProposedFeatures.all), diskWorld());
}
