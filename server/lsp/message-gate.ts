/** What becomes of messages before a feature sees them: out of turn they are refused, cancelled ones are not begun. */
import {
  type ConnectionOptions,
  ErrorCodes,
  LSPErrorCodes,
  type Message,
  type RequestMessage,
  type ResponseMessage,
} from "vscode-languageserver";

/** Requests that are out of turn are sent here, and answered with the error they carry. */
export const REFUSED = "deepwake/refused";

/** Why a request is refused, as the handler of refused requests gets it. */
export interface Refusal {
  readonly code: number;
  readonly message: string;
}

const NOT_BEGUN: Refusal = { code: ErrorCodes.ServerNotInitialized, message: "initialize comes first" };
const BEGUN_TWICE: Refusal = { code: ErrorCodes.InvalidRequest, message: "initialize was sent already" };
const SHUT_DOWN: Refusal = { code: ErrorCodes.InvalidRequest, message: "the server was shut down" };
/** Not to be given up: the client can't go on without their answers. */
const ALWAYS_ANSWERED = ["initialize", "shutdown"];

/** The options of a connection that keeps to the protocol's order of things. */
export function gateMessages(): ConnectionOptions {
  const gate = new Gate();
  return {
    connectionStrategy: { cancelUndispatched: (message) => cancelled(message as RequestMessage) },
    messageStrategy: {
      handleMessage: (message, next) => {
        const passed = gate.pass(message);
        if (passed !== undefined) return next(passed);
      },
    },
  };
}

function cancelled({ jsonrpc, id, method }: RequestMessage): ResponseMessage | undefined {
  if (ALWAYS_ANSWERED.includes(method)) return undefined;
  return {
    jsonrpc,
    id,
    error: { code: LSPErrorCodes.RequestCancelled, message: "cancelled before it was begun" },
  };
}

class Gate {
  #phase: "new" | "running" | "ended" = "new";

  /** The message to be handled, which may be another one; undefined where it is dropped. */
  pass(message: Message): Message | undefined {
    if (!("method" in message) || typeof message.method !== "string") return message;
    const { method } = message;
    if (!("id" in message)) return this.#phase === "running" || isAlwaysHeard(method) ? message : undefined;
    const refusal = this.#refusalOf(method);
    if (method === "initialize" && this.#phase === "new") this.#phase = "running";
    if (method === "shutdown" && this.#phase === "running") this.#phase = "ended";
    if (refusal === undefined) return message;
    return { ...message, method: REFUSED, params: refusal } as RequestMessage;
  }

  #refusalOf(method: string): Refusal | undefined {
    if (this.#phase === "ended") return SHUT_DOWN;
    if (this.#phase === "new") return method === "initialize" ? undefined : NOT_BEGUN;
    return method === "initialize" ? BEGUN_TWICE : undefined;
  }
}

/** Goodbye, and notifications about the protocol itself. */
function isAlwaysHeard(method: string): boolean {
  return method === "exit" || method.startsWith("$/");
}
