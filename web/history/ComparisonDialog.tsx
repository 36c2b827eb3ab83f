import { useMemo } from "react";
import { compareProjects, type Project, readProject, wordComparison } from "../../core/project/index.ts";
import { Dialog, Select } from "../controls/index.ts";
import { useFiles } from "../files/index.ts";
import { useDocument } from "../stores/index.ts";
import { ComparisonPicture } from "./ComparisonPicture.tsx";
import { ComparisonTable } from "./ComparisonTable.tsx";
import { type Compared, NOW, useHistoryView } from "./history-view.ts";
import { saidTime } from "./said-time.ts";
import { type HeldSnapshot, snapshotsOf, useSnapshots } from "./snapshot-store.ts";
import { useMadeDifferences } from "./use-made-differences.ts";

/** Two snapshots, or one and the tray as it is now, compared by picture and numbers. */
export function ComparisonDialog() {
  const compared = useHistoryView((view) => view.compared);
  const compare = useHistoryView((view) => view.compare);
  const slot = useFiles((files) => files.slot);
  const held = useSnapshots((state) => state.held);
  if (compared === undefined) return null;
  const snapshots = snapshotsOf(held, slot);
  const options = [
    { value: NOW, word: NOW_WORD },
    ...snapshots.map(({ id, name, takenAtMs }) => ({ value: id, word: `${name}, ${saidTime(takenAtMs)}` })),
  ];
  return (
    <Dialog title="Compare" testId="comparison" onClose={() => compare(undefined)}>
      <div className="comparison">
        <div className="compared-choices">
          <Select
            label="Before"
            value={compared.beforeId}
            options={options}
            testId="compare-before"
            onChange={(beforeId) => compare({ ...compared, beforeId })}
          />
          <Select
            label="After"
            value={compared.afterId}
            options={options}
            testId="compare-after"
            onChange={(afterId) => compare({ ...compared, afterId })}
          />
        </div>
        <Differences compared={compared} snapshots={snapshots} />
      </div>
    </Dialog>
  );
}

const NOW_WORD = "The tray as it is now";

interface DifferencesProps {
  readonly compared: Compared;
  readonly snapshots: readonly HeldSnapshot[];
}

function Differences({ compared, snapshots }: DifferencesProps) {
  const now = useDocument((state) => state.project);
  const before = useSide(compared.beforeId, snapshots, now);
  const after = useSide(compared.afterId, snapshots, now);
  if (typeof before === "string") return <p role="alert">{before}</p>;
  if (typeof after === "string") return <p role="alert">{after}</p>;
  return <ReadDifferences before={before} after={after} />;
}

/** One side of the comparison, with what it is called. */
interface Side {
  readonly project: Project;
  readonly name: string;
}

/** The document on one side; in words why there is none. */
function useSide(id: string, snapshots: readonly HeldSnapshot[], now: Project): Side | string {
  const snapshot = snapshots.find((one) => one.id === id);
  const [name, text] = [snapshot?.name ?? "", snapshot?.text ?? ""];
  const read = useMemo(() => (text === "" ? undefined : readProject(text)), [text]);
  const project = id === NOW ? now : read?.ok ? read.project : undefined;
  const side = useMemo(() => project && { project, name: id === NOW ? "Now" : name }, [project, id, name]);
  return (
    side ?? (read?.ok === false ? `${name} could not be read. ${read.message}` : "This snapshot is deleted.")
  );
}

function ReadDifferences({ before, after }: { readonly before: Side; readonly after: Side }) {
  const tables = useMemo(() => {
    const both = { before: before.project, after: after.project };
    return wordComparison(compareProjects(both.before, both.after), both);
  }, [before, after]);
  const made = useMadeDifferences(before.project, after.project);
  const names = { beforeName: before.name, afterName: after.name };
  return (
    <>
      <ComparisonPicture before={before.project} after={after.project} {...names} />
      <ComparisonTable
        {...names}
        title="Drawn things"
        rows={tables.things}
        same="Nothing was added, taken away or changed besides nodes."
        testId="compared-things"
      />
      <ComparisonTable
        {...names}
        title="Nodes, in mm"
        rows={tables.nodes}
        same="No node was moved."
        testId="compared-nodes"
      />
      {made === "counting" ? (
        <p className="pencil">Counting parts, lengths and mass…</p>
      ) : made === "failed" ? (
        <p role="alert">A fault of ours: parts, lengths and mass could not be compared.</p>
      ) : (
        <ComparisonTable
          {...names}
          title="Parts, developed lengths and mass, without skins"
          rows={made}
          same="All parts are as long, as wide and as heavy."
          testId="compared-parts"
        />
      )}
      <ComparisonTable
        {...names}
        title="Settings"
        rows={tables.settings}
        same="No setting was changed."
        testId="compared-settings"
      />
    </>
  );
}
