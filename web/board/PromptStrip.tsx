import { Check, Slash, Spline } from "lucide-react";
import type { RefObject } from "react";
import { useDocument } from "../stores/index.ts";
import { evaluateSum, type ProfileChoice, type Sight, type ToolEvent } from "../tools/index.ts";
import { NumericStrip } from "./NumericStrip.tsx";

interface PromptStripProps {
  readonly sight: Sight;
  readonly hear: (event: ToolEvent) => void;
  readonly first: RefObject<HTMLInputElement | null>;
  readonly leave: () => void;
}

/** One sentence that says what to do now, and what can be typed or chosen while doing it. */
export function PromptStrip({ sight, hear, first, leave }: PromptStripProps) {
  return (
    <div className="prompt-strip" data-testid="prompt-strip">
      <p aria-live="polite" data-testid="prompt">
        {sight.prompt}
      </p>
      {sight.typing ? (
        <div className="prompt-tools">
          <NumericStrip typing={sight.typing} hear={hear} first={first} leave={leave} />
          {sight.nextSegment ? <SegmentButton next={sight.nextSegment} hear={hear} /> : null}
          {sight.profile ? <ProfileSelect choice={sight.profile} view={sight.view} hear={hear} /> : null}
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
        </div>
      ) : null}
    </div>
  );
}

function SegmentButton({
  next,
  hear,
}: {
  readonly next: "line" | "curve";
  readonly hear: (event: ToolEvent) => void;
}) {
  return (
    <button
      type="button"
      title="The next segment, straight or curved (C)"
      data-testid="next-segment"
      onClick={() => hear({ kind: "bend" })}
    >
      {next === "line" ? <Slash aria-hidden /> : <Spline aria-hidden />}
      {next === "line" ? "straight" : "curved"}
    </button>
  );
}

function ProfileSelect({
  choice,
  view,
  hear,
}: {
  readonly choice: ProfileChoice;
  readonly view: Sight["view"];
  readonly hear: (event: ToolEvent) => void;
}) {
  const profiles = useDocument((state) => state.project.profiles);
  const isForSection = view === "plan";
  const choose = (value: string) =>
    hear({
      kind: "choose-profile",
      choice:
        value === ""
          ? { kind: "new", zMm: profiles[0]?.nodes[0]?.z ?? 60 }
          : { kind: "existing", profileId: value },
    });
  return (
    <>
      <label className="strip-field">
        <span>profile</span>
        <select
          value={choice.kind === "new" ? "" : choice.profileId}
          data-testid="profile-choice"
          onChange={(event) => choose(event.currentTarget.value)}
        >
          <option value="">{isForSection ? "new, flat" : "new"}</option>
          {profiles.map((profile) => (
            <option key={profile.id} value={profile.id}>
              {profile.name}
            </option>
          ))}
        </select>
      </label>
      {isForSection && choice.kind === "new" ? (
        <label className="strip-field">
          <span>at z</span>
          <input
            type="text"
            inputMode="decimal"
            className="number"
            aria-label="Height of the new flat profile above the ground in mm"
            data-testid="profile-height"
            defaultValue={String(choice.zMm)}
            onChange={(event) => {
              const zMm = evaluateSum(event.currentTarget.value);
              if (zMm !== undefined) hear({ kind: "choose-profile", choice: { kind: "new", zMm } });
            }}
          />
        </label>
      ) : null}
    </>
  );
}
