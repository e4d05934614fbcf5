// Every format that is told apart by the file itself, the most particular first.
import { detectGhcnFixed, detectGhcnLong, detectGsod, detectNoaaTable } from "./format-ghcn.ts";
import { detectMonthLines, detectMonthlyOnly, detectYearGrid } from "./format-months.ts";
import {
  detectBom,
  detectCanada,
  detectDwd,
  detectEcad,
  detectKnmi,
  detectMeteoFrance,
  detectMidas,
} from "./format-stations.ts";
import { detectAmountAndPeriod, detectTable } from "./format-table.ts";
import type { FormatDetector, FormatReader, Head } from "./intake.ts";

const FORMATS: readonly FormatDetector[] = [
  detectMonthlyOnly,
  detectGhcnLong,
  detectGhcnFixed,
  detectGsod,
  detectNoaaTable,
  detectBom,
  detectEcad,
  detectKnmi,
  detectDwd,
  detectMeteoFrance,
  detectCanada,
  detectMidas,
  detectAmountAndPeriod,
  detectMonthLines,
  detectYearGrid,
  detectTable,
];

/** The reader of the first format that knows the file, or null. */
export function recogniseFormat(head: Head): FormatReader | null {
  for (const detect of FORMATS) {
    const reader = detect(head);
    if (reader) return reader;
  }
  return null;
}
