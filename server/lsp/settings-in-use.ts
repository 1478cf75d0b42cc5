/** The settings in use: asked for, or told, and what of them can't be used is said once. */
import { type Connection, MessageType, ShowMessageNotification } from "vscode-languageserver";
import type { ClientAbilities } from "./capabilities.ts";
import type { Guard } from "./guard.ts";
import { DEFAULT_SETTINGS, isSameSettings, readSettings, type Settings } from "./settings.ts";

/** What following settings needs from around it. */
export interface SettingsParts {
  readonly connection: Connection;
  readonly guard: Guard;
  client(): ClientAbilities;
  /** Others hold from now on. */
  changed(): void;
}

/** Follows the settings of one client. */
export class SettingsInUse {
  readonly #parts: SettingsParts;
  #current: Settings = DEFAULT_SETTINGS;
  /** What of the settings in use was told that it can't be used. */
  #told: readonly string[] = [];

  constructor(parts: SettingsParts) {
    this.#parts = parts;
  }

  get current(): Settings {
    return this.#current;
  }

  /** Takes what the client sent along with its first message; before it has answered, nothing may be said of it. */
  begin(section: unknown): void {
    this.#current = readSettings(section);
  }

  /** Says what of the first settings can't be used, and asks for those that hold where the client can tell. */
  async start(): Promise<void> {
    this.#warn(this.#current.problems);
    if (this.#parts.client().tellsSettings) await this.#ask();
  }

  /** A client that can be asked is asked; from others come the settings themselves. */
  configure(pushed: unknown): void {
    const { client, guard } = this.#parts;
    if (client().tellsSettings) guard.background("reading settings", this.#ask());
    else this.#use(readSettings((pushed as { deepwake?: unknown } | null)?.deepwake));
  }

  async #ask(): Promise<void> {
    this.#use(readSettings(await this.#parts.connection.workspace.getConfiguration("deepwake")));
  }

  #use(settings: Settings): void {
    this.#warn(settings.problems);
    if (isSameSettings(settings, this.#current)) return;
    this.#current = settings;
    this.#parts.changed();
  }

  /** Shows what can't be used of the settings, each once until it was mended. */
  #warn(problems: readonly string[]): void {
    const { connection, guard } = this.#parts;
    for (const message of problems.filter((problem) => !this.#told.includes(problem))) {
      const shown = connection.sendNotification(ShowMessageNotification.type, {
        type: MessageType.Warning,
        message,
      });
      guard.background("telling of settings", shown);
    }
    this.#told = problems;
  }
}
