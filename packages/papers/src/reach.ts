/** The pictures of reach: a day, a voyage, and the ribbon for a small cell. */
export { type ReachDay, type ReachDayRow, reachDay } from "./reachDay.ts";
export type { ReachGrade } from "./reachGrades.ts";
export type { ReachLeg } from "./reachLegs.ts";
export type { ReachLooks } from "./reachPicture.ts";
export { type ReachRibbonLooks, reachRibbon } from "./reachRibbon.ts";
export type { MinuteSpan } from "./reachSpans.ts";
export type { ReachThemeName } from "./reachTheme.ts";
export { type ReachCell, type ReachNight, type ReachVoyage, type ReachVoyageRow, reachVoyage } from "./reachVoyage.ts";
