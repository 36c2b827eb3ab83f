import { useEffect, useRef, useState } from "react";
import { NOW, useHistoryView } from "./history-view.ts";
import { saidTime } from "./said-time.ts";
import { type HeldSnapshot, useSnapshots } from "./snapshot-store.ts";
import { deleteSnapshot, goBackTo, renameSnapshot } from "./snapshots.ts";
import { UnkeptSign } from "./UnkeptSign.tsx";

interface SnapshotRowProps {
  readonly snapshot: HeldSnapshot;
  readonly isReadOnly: boolean;
}

/** One snapshot: its name, when it was taken, and what can be done with it. */
export function SnapshotRow({ snapshot, isReadOnly }: SnapshotRowProps) {
  const isNaming = useSnapshots((state) => state.namingId === snapshot.id);
  const { name, takenAtMs, isKept } = snapshot;
  const label = (verb: string) => `${verb} ${name}`;
  return (
    <li className="snapshot" data-testid="snapshot">
      {isNaming ? (
        <SnapshotName snapshot={snapshot} />
      ) : (
        <b className="snapshot-name" title={name}>
          {name}
        </b>
      )}
      <time dateTime={new Date(takenAtMs).toISOString()}>{saidTime(takenAtMs)}</time>
      {isKept ? null : <UnkeptSign />}
      <div className="snapshot-deeds">
        <button
          type="button"
          className="plain"
          aria-label={label("Compare")}
          title="Compare it with the tray as it is now, or with another snapshot"
          data-testid="snapshot-compare"
          onClick={() => useHistoryView.getState().compare({ beforeId: snapshot.id, afterId: NOW })}
        >
          Compare
        </button>
        {isReadOnly ? null : <ChangingDeeds snapshot={snapshot} />}
      </div>
    </li>
  );
}

/** What changes the tray, or the snapshot. */
function ChangingDeeds({ snapshot }: { readonly snapshot: HeldSnapshot }) {
  const label = (verb: string) => `${verb} ${snapshot.name}`;
  return (
    <>
      <button
        type="button"
        className="plain"
        aria-label={label("Go back to")}
        title="Make the tray what it was; one step, which can be taken back"
        data-testid="snapshot-go-back"
        onClick={() => goBackTo(snapshot)}
      >
        Go back
      </button>
      <button
        type="button"
        className="plain"
        aria-label={label("Rename")}
        data-testid="snapshot-rename"
        onClick={() => useSnapshots.setState({ namingId: snapshot.id })}
      >
        Rename
      </button>
      <button
        type="button"
        className="plain"
        aria-label={label("Delete")}
        data-testid="snapshot-delete"
        onClick={() => void deleteSnapshot(snapshot)}
      >
        Delete
      </button>
    </>
  );
}

/** The name while it is written: kept by Enter or by leaving it, left as it was by Escape. */
function SnapshotName({ snapshot }: { readonly snapshot: HeldSnapshot }) {
  const [name, setName] = useState(snapshot.name);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.select(), []);
  return (
    <input
      ref={field}
      type="text"
      className="snapshot-name"
      aria-label="Name of the snapshot"
      autoComplete="off"
      maxLength={60}
      value={name}
      data-draft
      data-testid="snapshot-name"
      onChange={(event) => setName(event.currentTarget.value)}
      onBlur={() => void renameSnapshot(snapshot, name)}
      onKeyDown={(event) => {
        if (event.key === "Enter") void renameSnapshot(snapshot, name);
        if (event.key === "Escape") useSnapshots.setState({ namingId: undefined });
        if (event.key === "Enter" || event.key === "Escape") event.stopPropagation();
      }}
    />
  );
}
