import { Pencil, Trash2 } from "lucide-react";
import { useState } from "react";
import { TextField } from "../controls/index.ts";
import { PlanThumbnail } from "../drawings/index.ts";
import { deleteWork, type KeptWork, renameWork, takeUpKept, useFiles } from "../files/index.ts";
import { wordDate } from "./word-date.ts";

/** The trays that are kept on this device: the last one to go on with, then the others. */
export function WorkList({ works }: { readonly works: readonly KeptWork[] }) {
  const inHand = useFiles((files) => files.slot);
  const openSlots = useFiles((files) => files.openSlots);
  const [last, ...others] = works;
  const isElsewhere = ({ slot }: KeptWork) => slot !== inHand && openSlots.has(slot);
  return (
    <>
      {last ? (
        <section className="continue" aria-labelledby="continue-title">
          <h2 id="continue-title" className="caption">
            Go on with
          </h2>
          <WorkRow work={last} isElsewhere={isElsewhere(last)} isLast />
        </section>
      ) : null}
      {others.length > 0 ? (
        <section aria-labelledby="others-title">
          <h2 id="others-title" className="caption">
            On this device
          </h2>
          <ul className="work-list" data-testid="work-list">
            {others.map((work) => (
              <li key={work.slot}>
                <WorkRow work={work} isElsewhere={isElsewhere(work)} isLast={false} />
              </li>
            ))}
          </ul>
        </section>
      ) : null}
    </>
  );
}

interface WorkRowProps {
  readonly work: KeptWork;
  readonly isElsewhere: boolean;
  readonly isLast: boolean;
}

function WorkRow({ work, isElsewhere, isLast }: WorkRowProps) {
  const [isRenaming, setRenaming] = useState(false);
  const title = work.title.trim() === "" ? "Tray without a name" : work.title;
  return (
    <div className="work-row" data-testid="work-row">
      <button
        type="button"
        className="plain work-open"
        data-testid={isLast ? "start-continue" : "work-open"}
        onClick={() => takeUpKept(work)}
      >
        <span className="work-picture">
          <PlanThumbnail picture={work.picture} />
        </span>
        <span className="work-words">
          <span className="work-title">{title}</span>
          <time className="pencil" dateTime={new Date(work.keptAtMs).toISOString()}>
            {wordDate(work.keptAtMs)}
          </time>
          {isElsewhere ? <span className="work-note">Open in another tab</span> : null}
        </span>
      </button>
      <span className="work-deeds">
        <button
          type="button"
          className="plain"
          aria-label={`Rename ${title}`}
          title="Rename"
          aria-expanded={isRenaming}
          data-testid="work-rename"
          onClick={() => setRenaming(!isRenaming)}
        >
          <Pencil aria-hidden />
        </button>
        <button
          type="button"
          className="plain"
          aria-label={`Delete ${title}`}
          title="Delete; it can be put back"
          data-testid="work-delete"
          onClick={() => void deleteWork(work)}
        >
          <Trash2 aria-hidden />
        </button>
      </span>
      {isRenaming ? (
        <TextField
          label="Name of the tray"
          value={work.title}
          mostLetters={60}
          testId="work-name"
          onChange={(name) => {
            setRenaming(false);
            void renameWork(work, name);
          }}
        />
      ) : null}
    </div>
  );
}
