export { CAUTIONS, type CautionGroup } from "./cautions.ts";
export { type LoadingSheetPaper, loadingSheetTypst } from "./loadingSheetTypst.ts";
