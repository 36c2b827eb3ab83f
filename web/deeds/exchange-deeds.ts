import { FileInput, FileSpreadsheet, FileType } from "lucide-react";
import { canExport, exportCsv, exportSvg } from "../exchange/export-chosen.ts";
import { useView } from "../stores/index.ts";
import type { Deed } from "./deed.ts";

/** Taking lines in from elsewhere, and giving them out. */
export const exchangeDeeds = {
  import: {
    name: "import",
    group: "tray",
    heard: "everywhere",
    word: "Import a line",
    explains: "Take an outline, profile, fence line or opening from an SVG file or a table of points",
    icon: FileInput,
    keys: ["Ctrl+I"],
    run: () => useView.getState().setOverlay("import"),
  },
  exportSvg: {
    name: "export-svg",
    group: "line",
    heard: "board",
    word: "Export as SVG",
    explains: "Write the chosen lines into an SVG file, true to size in mm; plan and side view apart",
    icon: FileType,
    keys: ["Ctrl+E"],
    isPossible: canExport,
    run: exportSvg,
  },
  exportCsv: {
    name: "export-csv",
    group: "line",
    heard: "board",
    word: "Export as CSV",
    explains: "Write the chosen lines as tables of points, x and y or x and z in mm",
    icon: FileSpreadsheet,
    keys: ["Ctrl+Shift+E"],
    isPossible: canExport,
    run: exportCsv,
  },
} satisfies Record<string, Deed>;
