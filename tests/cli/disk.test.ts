/** Files on a real disk: found, read, replaced whole. */
import { execFileSync } from "node:child_process";
import {
  chmodSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { diskFiles } from "../../client/cli/disk.ts";

const files = diskFiles();
let folder = "";

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "deepwake-disk-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Writes a file and answers its path. */
function write(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

test("replaces a file whole, keeps its mode, and leaves nothing beside it", () => {
  const path = write("day one.trip", "old\n");
  chmodSync(path, 0o640);
  expect(files.replaceText(path, "old\n", "new\n")).toBeUndefined();
  expect(readFileSync(path, "utf8")).toBe("new\n");
  expect(statSync(path).mode & 0o777).toBe(0o640);
  expect(readdirSync(folder)).toEqual(["day one.trip"]);
});

test("writes a new file whole, over one that is there only if forced, and leaves nothing beside it", () => {
  const path = join(folder, "c1.svg");
  expect(files.writeText(path, "one\n", false)).toBeUndefined();
  expect(files.writeText(path, "two\n", false)).toBe("it is there already; --force writes over it");
  expect(readFileSync(path, "utf8")).toBe("one\n");
  expect(files.writeText(path, "three\n", true)).toBeUndefined();
  expect(readFileSync(path, "utf8")).toBe("three\n");
  expect(readdirSync(folder)).toEqual(["c1.svg"]);
});

test("writes over no folder, no device, and through no link that leads nowhere", () => {
  symlinkSync(join(folder, "gone"), join(folder, "link.svg"));
  expect(files.writeText(folder, "one\n", true)).toBe("it is no file");
  expect(files.writeText("/dev/null", "one\n", true)).toBe("it is no file");
  expect(files.writeText(join(folder, "link.svg"), "one\n", false)).toContain("it is there already");
  expect(files.writeText(join(folder, "none", "c1.svg"), "one\n", false)).toBe("there is no such file");
  expect(readdirSync(folder)).toEqual(["link.svg"]);
});

test("follows a link to the file it stands for", () => {
  const path = write("real.trip", "old\n");
  symlinkSync(path, join(folder, "link.trip"));
  expect(files.replaceText(join(folder, "link.trip"), "old\n", "new\n")).toBeUndefined();
  expect(lstatSync(join(folder, "link.trip")).isSymbolicLink()).toBe(true);
  expect(readFileSync(path, "utf8")).toBe("new\n");
});

test("leaves a file alone that reads otherwise by now", () => {
  const path = write("a.trip", "changed\n");
  expect(files.replaceText(path, "old\n", "new\n")).toBe("it was changed by someone else meanwhile");
  expect(readFileSync(path, "utf8")).toBe("changed\n");
  expect(readdirSync(folder)).toEqual(["a.trip"]);
});

test("says why it can't: gone, a folder", () => {
  expect(files.replaceText(join(folder, "none.trip"), "", "new\n")).toBe("there is no such file");
  expect(files.kindOf(join(folder, "none.trip"))).toEqual({ kind: "none", why: "there is no such file" });
  expect(files.list(join(folder, "none"))).toEqual({ ok: false, why: "there is no such file" });
  expect(files.readText(folder)).toEqual({ ok: false, why: "it is a folder" });
});

test("lists files, links to files and folders; links to folders are not gone into", () => {
  mkdirSync(join(folder, "inner"));
  write("a.trip", "");
  symlinkSync(join(folder, "a.trip"), join(folder, "b.trip"));
  symlinkSync(folder, join(folder, "ring"));
  const listed = files.list(folder);
  expect(listed.ok && listed.names.sort((a, b) => (a.name < b.name ? -1 : 1))).toEqual([
    { name: "a.trip", kind: "file" },
    { name: "b.trip", kind: "file" },
    { name: "inner", kind: "folder" },
    { name: "ring", kind: "other" },
  ]);
});

/** Made by a tool of the system; Node has none. */
function makePipe(name: string): string {
  const path = join(folder, name);
  execFileSync("mkfifo", [path]);
  return path;
}

test.skipIf(process.platform === "win32")("comes upon no pipe, and through no link to one", () => {
  const pipe = makePipe("pipe.gear");
  symlinkSync(pipe, join(folder, "link.gear"));
  symlinkSync(pipe, join(folder, "link.trip"));
  const day = write("day.trip", "");
  const listed = files.list(folder);
  expect(listed.ok && listed.names.filter(({ kind }) => kind === "file").map(({ name }) => name)).toEqual([
    "day.trip",
  ]);
  expect(files.booksNear(day)).toEqual({ books: [], unread: [] });
});

test("says in plain words why a link can't be followed", () => {
  symlinkSync("ring.trip", join(folder, "ring.trip"));
  expect(files.readText(join(folder, "ring.trip"))).toEqual({
    ok: false,
    why: "its links lead round in a ring",
  });
  const below = join(write("day.trip", ""), "more.trip");
  expect(files.readText(below)).toEqual({ ok: false, why: "a part of its path is no folder" });
});
