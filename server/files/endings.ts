/** Name endings of the two kinds of file. */

export const GEAR_ENDING = ".gear";
export const TRIP_ENDING = ".trip";
