/** Names of files as a captain knows them. */

/** The name of the file at an address, with as many of its folders as tell it apart from the others. */
export function fileNameAmong(uri: string, others: readonly string[]): string {
  const path = partsOf(uri);
  const rivals = others.filter((other) => other !== uri).map(partsOf);
  for (let count = 1; count < path.length; count++) {
    const name = path.slice(-count).join("/");
    if (rivals.every((rival) => rival.slice(-count).join("/") !== name)) return name;
  }
  return path.join("/");
}

function partsOf(uri: string): string[] {
  const path = uri.replace(/^[a-z][a-z0-9+.-]*:\/\/[^/]*\//iu, "");
  return path.split("/").map(decoded);
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
