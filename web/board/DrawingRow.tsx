import { Slash, Spline } from "lucide-react";
import { type RefObject, useState } from "react";
import { useLengths } from "../controls/index.ts";
import { useDocument } from "../stores/index.ts";
import type { EdgeWay, OpeningShape, ProfileChoice, Sight, ToolEvent } from "../tools/index.ts";
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
      {sight.shape ? <ShapeSelect shape={sight.shape} hear={hear} /> : null}
      {sight.way ? <WaySelect way={sight.way} hear={hear} /> : null}
      <NumericStrip typing={typing} hear={hear} first={first} leave={leave} />
      {sight.zMm === undefined ? null : <DrawnHeightField zMm={sight.zMm} hear={hear} />}
      {sight.nextSegment ? <SegmentButton next={sight.nextSegment} hear={hear} /> : null}
      {sight.profile ? <ProfileSelect choice={sight.profile} view={sight.view} hear={hear} /> : null}
    </>
  );
}

type Hear = (event: ToolEvent) => void;

function ShapeSelect({ shape, hear }: { readonly shape: OpeningShape; readonly hear: Hear }) {
  const choose = (value: string) =>
    hear({ kind: "choose-shape", shape: value === "circle" ? "circle" : "outline" });
  return (
    <label className="strip-field">
      <span>as</span>
      <select
        value={shape}
        data-testid="opening-shape"
        onChange={(event) => choose(event.currentTarget.value)}
      >
        <option value="outline">an outline</option>
        <option value="circle">a circle</option>
      </select>
    </label>
  );
}

function WaySelect({ way, hear }: { readonly way: EdgeWay; readonly hear: Hear }) {
  const choose = (value: string) => hear({ kind: "choose-way", way: value === "draw" ? "draw" : "take" });
  return (
    <label className="strip-field">
      <span>edge</span>
      <select value={way} data-testid="edge-way" onChange={(event) => choose(event.currentTarget.value)}>
        <option value="take">that is there</option>
        <option value="draw">drawn freely</option>
      </select>
    </label>
  );
}

/** The height of what is drawn next: typed, or empty for that of the surface there, which it shows. */
function DrawnHeightField({ zMm: surfaceZMm, hear }: { readonly zMm: number; readonly hear: Hear }) {
  const { read, show, spoken } = useLengths();
  const [text, setText] = useState("");
  const isWrong = text.trim() !== "" && read(text) === undefined;
  const type = (typed: string) => {
    setText(typed);
    const zMm = read(typed);
    if (zMm !== undefined || typed.trim() === "") hear({ kind: "choose-height", zMm });
  };
  return (
    <label className="strip-field">
      <span>at z</span>
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        className="number"
        aria-label={`Height above the ground in ${spoken}; empty takes that of the surface there`}
        aria-invalid={isWrong}
        placeholder={show(surfaceZMm)}
        value={text}
        data-testid="drawn-height"
        onChange={(event) => type(event.currentTarget.value)}
      />
    </label>
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
  const { read, show, spoken } = useLengths();
  return (
    <label className="strip-field">
      <span>at z</span>
      <input
        type="text"
        inputMode="decimal"
        className="number"
        aria-label={`Height of the new flat profile above the ground in ${spoken}`}
        data-testid="profile-height"
        defaultValue={show(zMm)}
        onChange={(event) => {
          const typed = read(event.currentTarget.value);
          if (typed !== undefined) hear({ kind: "choose-profile", choice: { kind: "new", zMm: typed } });
        }}
      />
    </label>
  );
}
