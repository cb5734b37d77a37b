/** The workbook's own setting that says whether it holds the invented program: "yes", or anything else for a person's own. */
export const DEMO_SETTING = "soakbook.demo";
export const IS_DEMO = "yes";
