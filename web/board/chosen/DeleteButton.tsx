import { Trash2 } from "lucide-react";
import type { Command } from "../../../core/project/index.ts";
import { useView } from "../../stores/index.ts";
import { dispatchAll } from "../dispatch-all.ts";

/** Deletes what is chosen; undo brings it back. */
export function DeleteButton({
  word,
  commands,
}: {
  readonly word: string;
  readonly commands: readonly Command[];
}) {
  const remove = () => {
    dispatchAll(commands);
    useView.getState().select(undefined);
  };
  return (
    <button type="button" className="plain" title={word} data-testid="delete-chosen" onClick={remove}>
      <Trash2 aria-hidden />
      Delete
    </button>
  );
}
