/** Starts the language server in Node on the transport its arguments name (`--stdio`, `--node-ipc`, `--socket=N`). */
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { connect } from "./connect.ts";
import { diskWorld } from "./disk-world.ts";
import { gateMessages } from "./message-gate.ts";

connect(createConnection(ProposedFeatures.all, gateMessages()), diskWorld());
