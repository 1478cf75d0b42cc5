/** Figures as the captain reads them. */
export * from "../model/figures.ts";
