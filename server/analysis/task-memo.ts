/** Tasks kept by value: the same rig with the same settings in the same water is built, and written as a key, once. */
import type { Gear, Rig } from "../model/gear-types.ts";
import type { Setting } from "../model/setting.ts";
import type { CableSpread } from "../model/timeline.ts";
import { flowKey } from "../physics/rig-value.ts";
import type { WaterAndSpeed } from "./downrigger-input.ts";

/**
 * Enough for ten long days of one boat; past it a gear's tasks are built anew. What is solved of a task is kept with it,
 * so this is what checking a thousand trips leaves in memory.
 */
const MOST_TASKS = 1000;

/** What one kind of task is kept in. */
export type TaskMemo<Task> = WeakMap<Gear, Map<string, Task>>;

/**
 * The task kept for a rig of the gear book by a key of everything else it is built from, or a new one. A rig imagined
 * otherwise than the book has it is never kept.
 */
export function taskKept<Task>(
  memo: TaskMemo<Task>,
  gear: Gear,
  rig: Rig,
  keyOf: () => string,
  build: () => Task,
): Task {
  if (gear.rigs.get(rig.name) !== rig) return build();
  let tasks = memo.get(gear);
  if (tasks === undefined) {
    tasks = new Map();
    memo.set(gear, tasks);
  }
  const key = keyOf();
  const known = tasks.get(key);
  if (known !== undefined) return known;
  const task = build();
  if (tasks.size >= MOST_TASKS) tasks.clear();
  tasks.set(key, task);
  return task;
}

/** A key of its parts. It is joined, not added up, which would keep every piece in memory besides. */
export const keyFrom = (parts: readonly unknown[]): string => parts.join(" ");

const keysOfSettings = new WeakMap<Setting, string>();

/** A setting as part of a key; written once for each setting. */
export function settingKey(setting: Setting): string {
  const known = keysOfSettings.get(setting);
  if (known !== undefined) return known;
  const key = JSON.stringify(setting);
  keysOfSettings.set(setting, key);
  return key;
}

const keysOfRods = new WeakMap<CableSpread, { readonly rig: Rig; readonly key: string }>();

/** A cable rig with the rods clipped to it as part of a key; written once for rods that are kept. */
export function rodsKey(rig: Rig, rods: CableSpread): string {
  const known = keysOfRods.get(rods);
  if (known?.rig === rig) return known.key;
  const parts = [rig.name];
  for (const [name, { setting, isClipped }] of rods) parts.push(name, String(isClipped), settingKey(setting));
  const key = keyFrom(parts);
  keysOfRods.set(rods, { rig, key });
  return key;
}

const keysOfWaters = new WeakMap<WaterAndSpeed, string>();

/** Water and speed as part of a key; written once for each. */
export function waterKey(water: WaterAndSpeed): string {
  const known = keysOfWaters.get(water);
  if (known !== undefined) return known;
  const key = writeWaterKey(water);
  keysOfWaters.set(water, key);
  return key;
}

function writeWaterKey(water: WaterAndSpeed): string {
  const { flow, shape, speedSdMS, surfaceSpeedSdMS, waterTemperatureC } = water;
  const shapeKey = shape === undefined ? "" : `${shape.depthsM} ${shape.byMS}`;
  return keyFrom([flowKey(flow), shapeKey, speedSdMS, surfaceSpeedSdMS, waterTemperatureC]);
}
