/** Listens to the server's process. */
import childProcess from "node:child_process";
import { heard, type Message } from "./messages.ts";

/** Takes note of what is said to server processes, and by them, that are started from now on. */
export function followProcesses(): void {
  const { fork } = childProcess;
  const followed = (...args: Parameters<typeof fork>): ReturnType<typeof fork> => {
    const child = fork(...args);
    const { send } = child;
    child.send = (message: unknown, ...rest: never[]) => {
      heard.fromEditor.push(message as Message);
      return Reflect.apply(send, child, [message, ...rest]);
    };
    child.on("message", (message) => heard.fromServer.push(message as Message));
    return child;
  };
  Reflect.set(childProcess, "fork", followed);
}
