/** The workbook's own setting while a long write goes on: which change of the Change log it is, or "" when there is none. */
export const UNFINISHED_SETTING = "soakbook.unfinished";
