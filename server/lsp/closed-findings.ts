/** What was found in files that aren't open, as the client is told it. */
import type { Diagnostic } from "vscode-languageserver";
import { closedDiagnostics } from "../service/diagnostics.ts";
import type { CheckedFile, WorkspaceChecks } from "../workspace/workspace-checks.ts";
import type { WorkspaceIndex } from "../workspace/workspace-index.ts";
import type { ClosedFile } from "./diagnostic-report.ts";
import { type NamedFindings, named } from "./diagnostic-report.ts";

/** What telling needs from around it. */
export interface Telling {
  /** Diagnostics as this client takes them. */
  forClient(uri: string, diagnostics: Diagnostic[]): Diagnostic[];
  /** Sends diagnostics unasked; does nothing for a client that asks. */
  send(uri: string, diagnostics: readonly Diagnostic[]): void;
  isOpen(uri: string): boolean;
  /** The setting that has closed files checked. */
  isWanted(): boolean;
}

/** Hands out findings, and remembers what was sent so that nothing is sent twice. */
export class ClosedFindings {
  readonly #index: WorkspaceIndex;
  readonly #checks: WorkspaceChecks;
  readonly #telling: Telling;
  readonly #named = new WeakMap<CheckedFile, NamedFindings>();
  /** The name of what was sent last for each file with findings. */
  readonly #sent = new Map<string, string>();

  constructor(index: WorkspaceIndex, checks: WorkspaceChecks, telling: Telling) {
    this.#index = index;
    this.#checks = checks;
    this.#telling = telling;
  }

  /** What was found in a file; undefined where it is open, unknown or not checked yet. */
  of(uri: string): NamedFindings | undefined {
    const checked = this.#checks.checked().get(uri);
    const record = this.#index.kept().get(uri)?.record;
    if (checked === undefined || record === undefined || !this.#telling.isWanted()) return undefined;
    if (this.#telling.isOpen(uri)) return undefined;
    const known = this.#named.get(checked);
    if (known !== undefined) return known;
    const diagnostics = closedDiagnostics(uri, record.bom, checked.findings);
    const found = named(this.#telling.forClient(uri, diagnostics));
    this.#named.set(checked, found);
    return found;
  }

  *all(): Generator<ClosedFile> {
    for (const uri of this.#checks.checked().keys()) {
      const found = this.of(uri);
      if (found !== undefined) yield { uri, ...found };
    }
  }

  /** Sends what holds now, if it is something else than was sent. */
  tell(uri: string): void {
    if (this.#telling.isOpen(uri)) {
      this.#sent.delete(uri);
      return;
    }
    const found = this.of(uri);
    const isNothing = found === undefined || found.diagnostics.length === 0;
    if (this.#sent.get(uri) === (isNothing ? undefined : found.resultId)) return;
    if (isNothing) this.#sent.delete(uri);
    else this.#sent.set(uri, found.resultId);
    this.#telling.send(uri, found?.diagnostics ?? []);
  }

  /** The same for every file that was spoken of or could be, but for those that are about to be looked at. */
  tellAll(): void {
    for (const uri of new Set([...this.#sent.keys(), ...this.#checks.checked().keys()]))
      if (!this.#checks.isWaiting(uri)) this.tell(uri);
  }
}
