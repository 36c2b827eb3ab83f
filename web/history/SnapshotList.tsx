import { Camera } from "lucide-react";
import { useEffect } from "react";
import { saveAsFile, useFiles } from "../files/index.ts";
import { useDocument } from "../stores/index.ts";
import { SnapshotRow } from "./SnapshotRow.tsx";
import { snapshotsOf, useSnapshots } from "./snapshot-store.ts";
import { loadSnapshots, putBackDeleted, takeSnapshot } from "./snapshots.ts";

/** The snapshots of this tray: taken, named, compared, gone back to, deleted and put back. */
export function SnapshotList() {
  const slot = useFiles((files) => files.slot);
  const held = useSnapshots((state) => state.held);
  const isReadOnly = useDocument((state) => state.isReadOnly);
  useEffect(() => {
    if (slot !== undefined) void loadSnapshots(slot);
  }, [slot]);
  const snapshots = snapshotsOf(held, slot);
  return (
    <section className="snapshots" aria-label="Snapshots" data-testid="snapshots">
      <header>
        <h2 className="caption">Snapshots</h2>
        {isReadOnly ? null : (
          <button
            type="button"
            title="Keep the tray as it is now, under a name (Ctrl+Shift+S)"
            data-testid="take-snapshot"
            onClick={() => void takeSnapshot()}
          >
            <Camera aria-hidden />
            Take one
          </button>
        )}
      </header>
      <SnapshotNews slot={slot} />
      {snapshots.length > 0 ? (
        <ul>
          {snapshots.map((snapshot) => (
            <SnapshotRow key={snapshot.id} snapshot={snapshot} isReadOnly={isReadOnly} />
          ))}
        </ul>
      ) : (
        <p className="empty">
          A snapshot keeps the tray as it is now, under a name. Take one before you try something.
        </p>
      )}
    </section>
  );
}

/** What was deleted last, with a way to put it back, and what went wrong. */
function SnapshotNews({ slot }: { readonly slot: string | undefined }) {
  const message = useSnapshots((state) => state.message);
  const isUnkept = useSnapshots((state) => state.held.some((other) => !other.isKept));
  const deleted = useSnapshots((state) => (state.deleted?.slot === slot ? state.deleted : undefined));
  return (
    <div className="snapshot-news" role="status" data-testid="snapshot-news">
      {deleted ? (
        <p>
          {deleted.name} is deleted.
          <button type="button" data-testid="put-back" onClick={() => void putBackDeleted()}>
            Put it back
          </button>
        </p>
      ) : null}
      {message === undefined ? null : (
        <p>
          {message}
          {isUnkept ? (
            <button type="button" onClick={saveAsFile}>
              Save as a file
            </button>
          ) : null}
        </p>
      )}
    </div>
  );
}
