/** What is said of a link when one points at it. */
export const LINK_TIPS = {
  book: (boat: string): string => `Gear book of ${boat}`,
  map: "Show it on the map",
  picture: "Open the picture",
} as const;
