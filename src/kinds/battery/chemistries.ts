// What batteries are made of, by word.

export const CHEMISTRIES = {
  lifepo4: "lithium iron phosphate",
  agm: "sealed lead (AGM or gel)",
  flooded: "flooded lead",
  ups: "sealed lead out of a UPS",
};
