export { CAUTIONS, type CautionGroup } from "./cautions.ts";
export { type LoadingSheetPaper, loadingSheetTypst } from "./loadingSheetTypst.ts";
export { type DayInWords, placeReason } from "./placeReason.ts";
export * from "./reach.ts";
