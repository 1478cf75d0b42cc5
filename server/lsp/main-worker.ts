/** Starts the language server in a browser's worker; its client reaches the files. */
/// <reference lib="webworker" />
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  ProposedFeatures,
} from "vscode-languageserver/browser";
import { clientWorld, filesOf } from "./client-world.ts";
import { connect } from "./connect.ts";
import { takeLifeLock } from "./life-lock.ts";
import { gateMessages } from "./message-gate.ts";
import { LIFE_LOCK } from "./protocol.ts";

const [reader, writer] = [new BrowserMessageReader(self), new BrowserMessageWriter(self)];
const connection = createConnection(ProposedFeatures.all, reader, writer, gateMessages());
const lifeLock = takeLifeLock();
connection.onRequest(LIFE_LOCK, () => lifeLock);
connect(connection, clientWorld(filesOf(connection)));
