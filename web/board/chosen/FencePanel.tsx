import type { Fence, FenceChanges } from "../../../core/project/index.ts";
import { Choice, TextField } from "../../controls/index.ts";
import { HelpMark } from "../../help/index.ts";
import { useDocument } from "../../stores/index.ts";
import { ChosenProblems } from "./ChosenProblems.tsx";
import { CoreFields } from "./CoreFields.tsx";
import { DeleteButton } from "./DeleteButton.tsx";
import { DepthsTable } from "./DepthsTable.tsx";
import { NodesTable } from "./NodesTable.tsx";
import { PanelFields } from "./PanelFields.tsx";

/** A fence as numbers: its line, its finished lower edge, its seat and its foam. */
export function FencePanel({ fence }: { readonly fence: Fence }) {
  const change = (changes: FenceChanges) =>
    useDocument.getState().dispatch({ kind: "change-fence", itemId: fence.id, changes });
  return (
    <>
      <header>
        <h2>
          <span className="code">F{fence.number}</span> {fence.name}
        </h2>
        <HelpMark term="fence" />
        <DeleteButton word="Delete fence" commands={[{ kind: "delete-item", itemId: fence.id }]} />
      </header>
      <ChosenProblems belongs={({ itemId }) => itemId === fence.id} />
      <TextField label="Name" value={fence.name} mostLetters={60} onChange={(name) => change({ name })} />
      <Choice
        label="Its upper edge sits on"
        value={fence.seat}
        options={[
          { value: "core", word: "the foam" },
          { value: "skin", word: "the finished skin" },
        ]}
        onChange={(seat) => change({ seat })}
      />
      <label className="tick">
        <input
          type="checkbox"
          checked={fence.standsFirst}
          data-testid="stands-first"
          onChange={(event) => change({ standsFirst: event.currentTarget.checked })}
        />
        stands in the jig before the sheets
      </label>
      <PanelFields fence={fence} onChange={(panel) => change({ panel })} />
      <NodesTable line={{ of: "item", itemId: fence.id }} title="Line in plan" closed={false} />
      {fence.lowerEdge.kind === "heights" ? (
        <NodesTable
          line={{ of: "lower-edge", itemId: fence.id }}
          title="Lower edge, height above ground"
          closed={false}
        />
      ) : (
        <DepthsTable fence={fence} nodes={fence.lowerEdge.nodes} />
      )}
      <CoreFields item={fence} onChange={(core) => change({ core })} />
    </>
  );
}
