import { EyeOff } from "lucide-react";
import { hiddenThings } from "../../core/project/index.ts";
import { useDocument } from "../stores/index.ts";
import { showEverything } from "./set-standing.ts";

/** How many things the board does not draw, and the way to see them all again. */
export function HiddenCount() {
  const count = useDocument((state) => hiddenThings(state.project).length);
  if (count === 0) return null;
  return (
    <button
      type="button"
      className="plain hidden-count"
      title="Not drawn on the board, and made all the same. Show them all (Shift+H)"
      data-testid="hidden-count"
      onClick={showEverything}
    >
      <EyeOff aria-hidden />
      {`${count} hidden`}
    </button>
  );
}
