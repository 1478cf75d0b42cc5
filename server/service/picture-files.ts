/** Where the pictures that a journal names lie: beside the journal, or where their name leads from there. */

const ABSOLUTE = /^(?:[a-z][a-z0-9+.-]*:|[/\\])/iu;
/** The parts of an address before its first folder: scheme, nothing, host. */
const ROOT_PARTS = 3;

/** The address of a picture named in a journal; undefined where the name is no path from the journal's folder. */
export function pictureUri(journal: string, name: string): string | undefined {
  return joined(journal, name, encodeURIComponent);
}

/** The same with both addresses as people read them, nothing encoded. */
export function picturePath(journal: string, name: string): string | undefined {
  return joined(journal, name, (part) => part);
}

/** The name that a journal has to give a picture, addresses as people read them; undefined where no path leads there. */
export function pictureName(journal: string, picture: string): string | undefined {
  const from = journal.split("/").slice(0, -1);
  const to = picture.split("/");
  let shared = 0;
  while (shared < from.length && shared < to.length - 1 && from[shared] === to[shared]) shared++;
  if (shared < ROOT_PARTS) return undefined;
  return [...from.slice(shared).map(() => ".."), ...to.slice(shared)].join("/");
}

function joined(journal: string, name: string, written: (part: string) => string): string | undefined {
  if (!journal.includes(":/") || ABSOLUTE.test(name)) return undefined;
  const folders = journal.split("/").slice(0, -1);
  for (const part of name.split(/[/\\]/u)) {
    if (part === "..") {
      if (folders.length <= ROOT_PARTS) return undefined;
      folders.pop();
    } else if (part !== "." && part !== "") folders.push(written(part));
  }
  return folders.join("/");
}
