/** The language server in this process, loaded only when it is asked for. In a bundle it is the file beside. */

/** Starts the server on the way of talking that its arguments name; it ends the process when its client says so. */
export async function startServer(from: NodeJS.Process, ways: readonly string[]): Promise<void> {
  // The protocol's library reads them where a server of its own would find them.
  from.argv.splice(2, from.argv.length, ...ways);
  await import("../../server/lsp/main-node.ts");
}
