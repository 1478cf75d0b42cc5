/** True for lists of the very same things. */
export function isSameList(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((part, i) => Object.is(part, other[i]));
}
