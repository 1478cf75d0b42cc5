/**
 * Loads a bundle together with what was compiled of it in an earlier run, so that a program that starts doesn't compile
 * the same functions again. What Node keeps by itself (since 22) is made before anything ran, so it has few functions;
 * this is made at the end of a run. It only spares work: where it can't be kept or read, all works as ever.
 *
 * V8 itself takes kept code for the same version, settings and length of text only; that the text is the same too, the
 * stamp says that the bundler puts before each bundle.
 */
import {
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { cachedDataVersionTag } from "node:v8";
import { Script } from "node:vm";
import { underUsualSettings } from "./engine-settings.ts";

/** `/*` and the SHA-256 of what follows, in hex. What has it is plain ASCII. */
const STAMP = /^\/\*([0-9a-f]{64})\*\//u;
const SIBLING = /^\.\/([\w-]+\.cjs)$/u;
const BEFORE = "(function (exports, require, module, __filename, __dirname) {";
const AFTER = "\n})";

/** What a later run did besides is kept once a day; what no run made anew in a month is from a version that is gone. */
const A_DAY_MS = 24 * 3600 * 1000;
const A_MONTH_MS = 30 * A_DAY_MS;
/** A server may be killed and never come to its end; by then it did what it does first. */
const LONG_RUN_MS = 20_000;

/** In the mode of a folder: its group or anybody may write. */
const OTHERS_WRITE = 0o022;

/** A bundle's code and the file that it is to be kept in. */
interface Unkept {
  readonly script: Script;
  readonly file: string;
}

/** The bundles of one folder, each loaded once. */
class Loader {
  readonly #folder: string;
  readonly #use: string;
  /** Where code is kept; undefined where it can't be. */
  readonly #store: string | undefined;
  readonly #modules = new Map<string, NodeModule>();
  #unkept: Unkept[] = [];

  constructor(folder: string, use: string, store: string | undefined) {
    this.#folder = folder;
    this.#use = use;
    this.#store = store;
  }

  /** What a bundle exports. Bundles ask for one another in the same way. */
  load(name: string): unknown {
    const known = this.#modules.get(name);
    if (known !== undefined) return known.exports;
    const filename = join(this.#folder, name);
    const text = readFileSync(filename, "latin1");
    const stamp = STAMP.exec(text)?.[1];
    const required = createRequire(filename);
    if (stamp === undefined) return required(filename);
    const module = { exports: {} } as NodeModule;
    this.#modules.set(name, module);
    const require = (request: string): unknown => {
      const sibling = SIBLING.exec(request)?.[1];
      return sibling === undefined ? required(request) : this.load(sibling);
    };
    const script = underUsualSettings(() => this.#compile(text, filename, stamp));
    const run = script.runInThisContext();
    run(module.exports, require, module, filename, this.#folder);
    return module.exports;
  }

  #compile(text: string, filename: string, stamp: string): Script {
    const code = BEFORE + text + AFTER;
    const options = { filename, columnOffset: -BEFORE.length };
    if (this.#store === undefined) return new Script(code, options);
    const file = join(
      this.#store,
      `${stamp.slice(0, 32)}-${this.#use}-${cachedDataVersionTag().toString(16)}`,
    );
    const kept = readKept(file);
    const script = new Script(code, { ...options, ...(kept && { cachedData: kept.code }) });
    if (kept === undefined || script.cachedDataRejected === true || kept.isOld)
      this.#unkept.push({ script, file });
    return script;
  }

  /** Keeps what was compiled of the bundles so far and isn't kept yet. */
  keep(): void {
    const unkept = this.#unkept;
    this.#unkept = [];
    if (this.#store === undefined || unkept.length === 0) return;
    try {
      for (const { script, file } of unkept) {
        const beside = `${file}.${process.pid}`;
        const code = underUsualSettings(() => script.createCachedData());
        writeFileSync(beside, code, { mode: 0o600 });
        renameSync(beside, file);
      }
      clearOld(this.#store);
    } catch {
      // A full disk, or a folder that may not be written: the next run compiles again.
    }
  }
}

function readKept(file: string): { code: Buffer; isOld: boolean } | undefined {
  try {
    return { code: readFileSync(file), isOld: Date.now() - statSync(file).mtimeMs > A_DAY_MS };
  } catch {
    return undefined;
  }
}

function clearOld(store: string): void {
  for (const name of readdirSync(store)) {
    const file = join(store, name);
    if (Date.now() - statSync(file).mtimeMs > A_MONTH_MS) rmSync(file, { force: true });
  }
}

/** The user's own folder for kept code, made if need be; undefined where nobody can vouch for what is in it. */
function storeOf({ env, getuid }: NodeJS.Process): string | undefined {
  if (env.NODE_DISABLE_COMPILE_CACHE !== undefined) return undefined;
  const user = getuid?.();
  try {
    const store = join(tmpdir(), user === undefined ? "deepwake-code" : `deepwake-code-${user}`);
    mkdirSync(store, { recursive: true, mode: 0o700 });
    const stat = lstatSync(store);
    const isOwn = user === undefined || (stat.uid === user && (stat.mode & OTHERS_WRITE) === 0);
    return isOwn && stat.isDirectory() ? store : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Loads a bundle of a folder, and those that it asks for. `use` names what the program is started for, since other uses
 * run other functions: a word of small letters.
 */
export function loadKept(folder: string, name: string, use: string): unknown {
  const loader = new Loader(folder, use, storeOf(process));
  const keep = (): void => loader.keep();
  process.once("exit", keep);
  setTimeout(keep, LONG_RUN_MS).unref();
  return loader.load(name);
}
