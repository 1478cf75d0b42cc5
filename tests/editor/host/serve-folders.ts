/** Serves folders to a page, as the place does that a browser's editor loads its extensions from. */
import { once } from "node:events";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, resolve, sep } from "node:path";

/** Folders that are served, and the end of that. */
export interface FolderServer {
  /** The address that the folders' names follow. */
  readonly address: string;
  stop(): void;
}

const TYPES: Readonly<Record<string, string>> = {
  ".cjs": "text/javascript",
  ".js": "text/javascript",
  ".json": "application/json",
  ".svg": "image/svg+xml",
};

/** Serves each folder below its name on a free local port; of names that both fit the first one counts. */
export async function serveFolders(folders: Readonly<Record<string, string>>): Promise<FolderServer> {
  const server = createServer(async ({ url = "/" }, response) => {
    const file = fileAt(decodeURIComponent(new URL(url, "http://localhost").pathname), folders);
    const content = file === undefined ? undefined : await readFile(file).catch(() => undefined);
    response.writeHead(content === undefined ? 404 : 200, {
      "Access-Control-Allow-Origin": "*",
      "Access-Control-Allow-Headers": "*",
      "Content-Type": TYPES[extname(file ?? "")] ?? "text/plain",
    });
    response.end(content);
  });
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://localhost:${port}`,
    stop: () => {
      server.closeAllConnections();
      server.close();
    },
  };
}

/** The file that a path leads to, inside of the folder of its name only. */
function fileAt(path: string, folders: Readonly<Record<string, string>>): string | undefined {
  const [name, folder] = Object.entries(folders).find(([below]) => path.startsWith(`${below}/`)) ?? [];
  if (name === undefined || folder === undefined) return undefined;
  const file = resolve(join(folder, path.slice(name.length)));
  return file.startsWith(resolve(folder) + sep) ? file : undefined;
}
