import { BookOpen, FileDown, FileJson2, FolderArchive, Printer } from "lucide-react";
import { useDocument } from "../../stores/index.ts";
import type { PaperKind } from "../../worker/index.ts";
import { usePaper } from "./paper-store.ts";

/** What can be made of the tray on paper: either PDF, what is looked at straight to the printer, one archive, the report. */
export function MakeButtons({ kind }: { readonly kind: PaperKind }) {
  const project = useDocument((state) => state.project);
  const { write, writeReport, writing } = usePaper();
  const isBusy = writing !== undefined;
  return (
    <div className="make-buttons">
      <button
        type="button"
        className="primary"
        data-testid="make-templates"
        disabled={isBusy}
        onClick={() => void write(project, { what: "file", kind: "templates" })}
      >
        <FileDown aria-hidden /> Make templates PDF
      </button>
      <button
        type="button"
        data-testid="make-book"
        disabled={isBusy}
        onClick={() => void write(project, { what: "file", kind: "book" })}
      >
        <BookOpen aria-hidden /> Make build book PDF
      </button>
      <button
        type="button"
        data-testid="print-now"
        disabled={isBusy}
        onClick={() => void write(project, { what: "printer", kind })}
      >
        <Printer aria-hidden /> {kind === "templates" ? "Print templates" : "Print build book"}
      </button>
      <button
        type="button"
        data-testid="make-everything"
        disabled={isBusy}
        onClick={() => void write(project, { what: "everything" })}
      >
        <FolderArchive aria-hidden /> Make everything, one ZIP
      </button>
      <button type="button" data-testid="make-report" onClick={() => void writeReport(project)}>
        <FileJson2 aria-hidden /> Make report
      </button>
    </div>
  );
}
