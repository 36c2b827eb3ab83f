import { Check, X } from "lucide-react";
import type { RefObject } from "react";
import { useMedia } from "../controls/index.ts";
import { EditPrompt, EditRow, useEdit } from "../edit/index.ts";
import type { DrawingView, Sight, ToolEvent } from "../tools/index.ts";
import { choosePicture, UnderlayRow } from "../underlay/index.ts";
import { boxForPicture } from "./box-for-picture.ts";
import { ChosenDeeds } from "./ChosenDeeds.tsx";
import { DrawingRow } from "./DrawingRow.tsx";
import { SnapBar } from "./snaps/SnapBar.tsx";

interface PromptStripProps {
  readonly sight: Sight;
  readonly hear: (event: ToolEvent) => void;
  readonly first: RefObject<HTMLInputElement | null>;
  readonly leave: () => void;
}

/**
 * Two rows over the drawing, always of one height so that nothing moves under the hand: a sentence that says
 * what to do now, and below it what can be typed or done with the tool in hand.
 */
export function PromptStrip({ sight, hear, first, leave }: PromptStripProps) {
  // On a phone the sentence has its row to itself.
  const isNarrow = useMedia("(max-width: 640px)");
  const task = useEdit((state) => state.task);
  const words = useEdit((state) => state.words);
  return (
    <div className="prompt-strip" data-testid="prompt-strip">
      <div className="prompt-row">
        {task ? (
          <EditPrompt task={task} />
        ) : (
          <p aria-live="polite" data-testid="prompt">
            {words ?? sight.prompt}
          </p>
        )}
        {sight.finish ? (
          <button
            type="button"
            className="primary"
            data-testid="finish"
            onClick={() => hear({ kind: "finish" })}
          >
            <Check aria-hidden />
            {sight.finish}
          </button>
        ) : null}
        {sight.typing ? (
          <button
            type="button"
            className="plain"
            title="Leave off (Escape)"
            data-testid="leave-off"
            onClick={() => hear({ kind: "cancel" })}
          >
            <X aria-hidden />
            Leave off
          </button>
        ) : null}
        {isNarrow ? null : <SnapBar />}
      </div>
      <div className="prompt-row tools">
        {sight.picture ? (
          <UnderlayRow picture={sight.picture} {...{ hear, first }} choose={choosePictureFor} />
        ) : sight.typing ? (
          <DrawingRow {...{ sight, hear, first, leave }} typing={sight.typing} />
        ) : task ? (
          <EditRow task={task} />
        ) : (
          <ChosenDeeds />
        )}
        {isNarrow ? <SnapBar /> : null}
      </div>
    </div>
  );
}

const choosePictureFor = (view: DrawingView): void => choosePicture(view, boxForPicture);
