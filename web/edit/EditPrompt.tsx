import { Check, X } from "lucide-react";
import { takeTask } from "./edit-deeds-of.ts";
import { type EditTask, useEdit } from "./edit-store.ts";
import { usePlannedEdit } from "./use-planned-edit.ts";

/** What an open task says: what will be done, or why it cannot be; and the two ways out of it. */
export function EditPrompt({ task }: { readonly task: EditTask }) {
  const planned = usePlannedEdit(task);
  return (
    <>
      <p className={planned.ok ? undefined : "edit-refused"} aria-live="polite" data-testid="edit-words">
        {planned.ok ? (planned.note ?? SENTENCES[task.kind]) : planned.words}
      </p>
      <button
        type="button"
        className="primary"
        title="Do it (Enter)"
        disabled={!planned.ok}
        data-testid="edit-take"
        onClick={takeTask}
      >
        <Check aria-hidden />
        Take
      </button>
      <button
        type="button"
        className="plain"
        title="Leave it as it is (Escape)"
        data-testid="edit-leave"
        onClick={useEdit.getState().leave}
      >
        <X aria-hidden />
        Leave
      </button>
    </>
  );
}

const SENTENCES: Readonly<Record<EditTask["kind"], string>> = {
  move: "Type how far it goes; Enter takes it.",
  turn: "Type the angle and the point to turn about; Enter takes it.",
  scale: "Type the size and the point that stays. In plan only; heights stay.",
  mirror: "Type where it is mirrored; Enter takes it.",
  repeat: "Type how many more, and how far each stands from the last.",
  parallel: "Type how far outward, or inward with a minus. Corners stay corners.",
};
