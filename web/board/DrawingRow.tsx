import { Slash, Spline } from "lucide-react";
import type { RefObject } from "react";
import { useDocument } from "../stores/index.ts";
import { evaluateSum, type ProfileChoice, type Sight, type ToolEvent } from "../tools/index.ts";
import { NumericStrip } from "./NumericStrip.tsx";

interface DrawingRowProps {
  readonly sight: Sight;
  readonly typing: NonNullable<Sight["typing"]>;
  readonly hear: (event: ToolEvent) => void;
  readonly first: RefObject<HTMLInputElement | null>;
  readonly leave: () => void;
}

/** What can be typed and chosen while a line is drawn. */
export function DrawingRow({ sight, typing, hear, first, leave }: DrawingRowProps) {
  return (
    <>
      <NumericStrip typing={typing} hear={hear} first={first} leave={leave} />
      {sight.nextSegment ? <SegmentButton next={sight.nextSegment} hear={hear} /> : null}
      {sight.profile ? <ProfileSelect choice={sight.profile} view={sight.view} hear={hear} /> : null}
    </>
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
      aria-label={`The next segment is ${next === "line" ? "straight; make it curved" : "curved; make it straight"}`}
      data-testid="next-segment"
      onClick={() => hear({ kind: "bend" })}
    >
      {next === "line" ? <Slash aria-hidden /> : <Spline aria-hidden />}
      {next === "line" ? "straight" : "curved"}
    </button>
  );
}

/** Height of the flat profile that a first section is given when the builder says nothing, mm. */
const FIRST_HEIGHT_MM = 60;

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
  const zMm = profiles[0]?.nodes[0]?.z ?? FIRST_HEIGHT_MM;
  const choose = (profileId: string) =>
    hear({
      kind: "choose-profile",
      choice: profileId === "" ? { kind: "new", zMm } : { kind: "existing", profileId },
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
      {isForSection && choice.kind === "new" ? <HeightField zMm={choice.zMm} hear={hear} /> : null}
    </>
  );
}

function HeightField({ zMm, hear }: { readonly zMm: number; readonly hear: (event: ToolEvent) => void }) {
  return (
    <label className="strip-field">
      <span>at z</span>
      <input
        type="text"
        inputMode="decimal"
        className="number"
        aria-label="Height of the new flat profile above the ground in mm"
        data-testid="profile-height"
        defaultValue={String(zMm)}
        onChange={(event) => {
          const typed = evaluateSum(event.currentTarget.value);
          if (typed !== undefined) hear({ kind: "choose-profile", choice: { kind: "new", zMm: typed } });
        }}
      />
    </label>
  );
}
