import { CircleCheck, Footprints, X } from "lucide-react";
import { guideSteps } from "./guide-steps.ts";
import { useGuide } from "./guide-store.ts";
import "./guide.css";

/** The quiet strip of a guided practice: the one next thing to do. It goes on by itself, and can be left. */
export function GuideStrip() {
  const guide = useGuide(({ guide: now }) => now);
  const leave = useGuide((state) => state.leave);
  if (guide === undefined) return null;
  const step = guideSteps[guide.step];
  return (
    <aside className="guide-strip" aria-label="Guided practice" data-testid="guide">
      {step ? <Footprints aria-hidden /> : <CircleCheck aria-hidden />}
      <p role="status" data-testid="guide-words" data-step={step?.name ?? "finished"}>
        {step ? (
          <>
            <span className="pencil">{`${guide.step + 1} of ${guideSteps.length} `}</span>
            {step.words}
          </>
        ) : (
          "That is the whole way, from an outline to paper. This piece can be built; a floor is more of the same."
        )}
      </p>
      <button type="button" className="plain" data-testid="guide-leave" onClick={leave}>
        <X aria-hidden />
        {step ? "Leave the practice" : "Close"}
      </button>
    </aside>
  );
}
