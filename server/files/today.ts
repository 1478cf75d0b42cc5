/** The day it is. */

/** A moment's day by the clock of this machine, `2031-06-21`. */
export function dayOf(moment: Date): string {
  const part = (value: number, length: number): string => String(value).padStart(length, "0");
  return `${part(moment.getFullYear(), 4)}-${part(moment.getMonth() + 1, 2)}-${part(moment.getDate(), 2)}`;
}
