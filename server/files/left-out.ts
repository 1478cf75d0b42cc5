/** What no walk through folders looks into. */

const LEFT_OUT = new Set(["node_modules"]);

/** Hidden names, and folders that packages are installed into. */
export function isLeftOut(name: string): boolean {
  return name.startsWith(".") || LEFT_OUT.has(name);
}
