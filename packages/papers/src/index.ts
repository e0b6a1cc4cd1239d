export { CAUTIONS, type CautionGroup } from "./cautions.ts";
export { type LoadingSheetPaper, loadingSheetTypst } from "./loadingSheetTypst.ts";
export { type DayInWords, placeReason } from "./placeReason.ts";
export { planHtml } from "./planHtml.ts";
export type { PlanPage } from "./planPage.ts";
export { planStatusWords } from "./planStatusWords.ts";
export * from "./reach.ts";
