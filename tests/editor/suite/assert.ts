/** Assertions that run in a browser's worker too, where Node's own can't be had. */

/** A value as it is shown in a failure, and compared. */
const shown = (value: unknown): string => JSON.stringify(value, undefined, 1) ?? String(value);

function fail(message: string | undefined, found: string): never {
  throw new Error(message === undefined ? found : `${message}: ${found}`);
}

function ok(value: unknown, message?: string): asserts value {
  if (!value) fail(message, `${shown(value)} is not true`);
}

function equal(actual: unknown, expected: unknown, message?: string): void {
  if (!Object.is(actual, expected)) fail(message, `${shown(actual)} is not ${shown(expected)}`);
}

function notEqual(actual: unknown, other: unknown, message?: string): void {
  if (Object.is(actual, other)) fail(message, `still ${shown(actual)}`);
}

/** Equal as JSON. */
function deepEqual(actual: unknown, expected: unknown, message?: string): void {
  if (shown(actual) !== shown(expected)) fail(message, `${shown(actual)} is not ${shown(expected)}`);
}

function match(text: string, pattern: RegExp, message?: string): void {
  if (!pattern.test(text)) fail(message, `${shown(text)} doesn't match ${pattern}`);
}

/** What the tests inside the editor state. */
const assert: {
  ok: typeof ok;
  equal: typeof equal;
  notEqual: typeof notEqual;
  deepEqual: typeof deepEqual;
  match: typeof match;
} = { ok, equal, notEqual, deepEqual, match };

export default assert;
