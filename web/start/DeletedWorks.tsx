import { Undo2 } from "lucide-react";
import { useState } from "react";
import { deleteForGood, type KeptWork, putBack } from "../files/index.ts";
import { wordDate } from "./word-date.ts";

/** What the builder deleted, to be put back or to be deleted for good; nothing of it goes by itself. */
export function DeletedWorks({ works }: { readonly works: readonly KeptWork[] }) {
  const [isAsking, setAsking] = useState(false);
  const words = works.length === 1 ? "this tray" : `these ${works.length} trays`;
  return (
    <details className="deleted-works" data-testid="deleted-works" open>
      <summary className="caption">{`Deleted (${works.length})`}</summary>
      <ul>
        {works.map((work) => (
          <li key={work.slot}>
            <span className="work-words">
              <span className="work-title">{work.title.trim() || "Tray without a name"}</span>
              <span className="pencil">{`deleted ${wordDate(work.deletedAtMs ?? work.keptAtMs)}`}</span>
            </span>
            <button type="button" data-testid="work-put-back" onClick={() => void putBack(work)}>
              <Undo2 aria-hidden />
              Put back
            </button>
          </li>
        ))}
      </ul>
      {isAsking ? (
        <p className="for-good">
          {`There is no way back from this. Delete ${words} for good?`}
          <button type="button" data-testid="keep-deleted" onClick={() => setAsking(false)}>
            Keep
          </button>
          <button
            type="button"
            data-testid="delete-for-good-now"
            onClick={() => {
              setAsking(false);
              void deleteForGood(works);
            }}
          >
            Delete for good
          </button>
        </p>
      ) : (
        <button type="button" className="plain" data-testid="delete-for-good" onClick={() => setAsking(true)}>
          {`Delete ${words} for good`}
        </button>
      )}
    </details>
  );
}
