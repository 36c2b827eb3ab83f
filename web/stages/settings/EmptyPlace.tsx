import { Pentagon } from "lucide-react";
import { useView } from "../../stores/index.ts";

/** A place that has nothing to show yet: what to do next, in one sentence, and the way there. */
export function EmptyPlace({ words }: { readonly words: string }) {
  const drawSection = () => {
    useView.getState().setStage("draw");
    useView.getState().setTool("section");
  };
  return (
    <div className="empty">
      <p>{words}</p>
      <button type="button" data-testid="draw-section" onClick={drawSection}>
        <Pentagon aria-hidden /> Draw a section
      </button>
    </div>
  );
}
