import { X } from "lucide-react";
import { useEffect, useState } from "react";
import { Choice } from "../../controls/index.ts";
import { useDocument } from "../../stores/index.ts";
import type { PaperKind } from "../../worker/index.ts";
import { MakeButtons } from "./MakeButtons.tsx";
import { PageList } from "./PageList.tsx";
import { usePaper } from "./paper-store.ts";
import { TemplateWaysTable } from "./TemplateWaysTable.tsx";

/** Typing in the fields gathers for so long before the pages are drawn again. */
const GATHER_MS = 200;

/** The pages before they are made: how many, what they look like, and the buttons that make the files. */
export function PagesAheadView() {
  const project = useDocument((state) => state.project);
  const [kind, setKind] = useState<PaperKind>("templates");
  const { ahead: last, aheadOf, failure, lookAhead } = usePaper();
  // Templates are never shown for the book, nor the book for templates, while the others are drawn.
  const ahead = aheadOf?.kind === kind ? last : undefined;
  const isSettled = aheadOf?.project === project && aheadOf.kind === kind;
  useEffect(() => {
    const timer = setTimeout(() => lookAhead(project, kind), GATHER_MS);
    return () => clearTimeout(timer);
  }, [project, kind, lookAhead]);
  const count = ahead?.set.pages.length;
  return (
    <>
      <header className="print-heading">
        <Choice
          label="Look at"
          value={kind}
          testId="paper-kind"
          options={[
            { value: "templates", word: "Templates, true to size" },
            { value: "book", word: "Build book" },
          ]}
          onChange={setKind}
        />
        <MakeButtons kind={kind} />
      </header>
      <Writing />
      {failure ? (
        <p className="failure" role="alert">
          {`The pages could not be drawn. ${failure}`}
        </p>
      ) : null}
      <p className="page-count" data-testid="page-count" data-settled={isSettled} aria-live="polite">
        {count === undefined ? "Drawing the pages…" : pageWords(count, project.paper.size, kind)}
      </p>
      {ahead ? <TemplateWaysTable counts={ahead.counts} /> : null}
      {ahead ? <PageList ahead={ahead} /> : null}
    </>
  );
}

function pageWords(count: number, size: string, kind: PaperKind): string {
  if (count === 0) return "No page. What keeps them from being made stands at the foot.";
  const pages = count === 1 ? "1 page" : `${count} pages`;
  return kind === "templates" ? `${pages} on ${size === "roll" ? "the roll" : size}` : pages;
}

function Writing() {
  const writing = usePaper((paper) => paper.writing);
  const cancel = usePaper((paper) => paper.cancel);
  if (writing === undefined) return null;
  const { done, all, what } = writing;
  const far = what === "everything" ? `${done} of ${all} pages and files` : `Page ${done} of ${all}`;
  return (
    <div className="writing" role="status" data-testid="writing">
      <progress {...(all > 0 ? { value: done, max: all } : {})} aria-label="Pages written" />
      <span>{all > 0 ? far : "Drawing the pages…"}</span>
      <button type="button" data-testid="cancel-writing" onClick={cancel}>
        <X aria-hidden /> Cancel
      </button>
    </div>
  );
}
