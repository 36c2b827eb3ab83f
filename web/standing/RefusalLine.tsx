import { LockOpen, X } from "lucide-react";
import { useDocument } from "../stores/index.ts";
import { setStanding } from "./set-standing.ts";
import "./standing.css";

/** Says which lock kept the last edit from being made, with the way to take the lock off. */
export function RefusalLine() {
  const refusals = useDocument((state) => state.refusals);
  const putAway = useDocument((state) => state.putRefusalsAway);
  const [first, ...more] = refusals;
  if (!first) return null;
  return (
    <div className="refusal-line" role="alert" data-testid="refusal">
      <p>
        {first.words}
        {more.length > 0 ? ` ${more.length} more locked with it.` : ""}
      </p>
      <button
        type="button"
        data-testid="refusal-unlock"
        onClick={() =>
          setStanding(
            refusals.map(({ thing }) => thing),
            "unlocked",
          )
        }
      >
        <LockOpen aria-hidden />
        Unlock
      </button>
      <button type="button" className="plain" data-testid="refusal-leave" onClick={putAway}>
        <X aria-hidden />
        Leave it
      </button>
    </div>
  );
}
