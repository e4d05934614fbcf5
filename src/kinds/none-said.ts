// Why there is no number, where several rooms say so.

export const NO_YEAR = "the record has no whole calendar year";
export const ONE_YEAR = "one year is neither dry nor wet: there is none to set beside it";
export const NO_BED = "no bed is in the run";
export const NO_CROP = "no crop stands within the season";
