import { useCallback, useMemo, useRef, useState } from "react";
import type { Jig } from "../../core/jig/index.ts";
import type { Solid } from "../../core/solids/index.ts";
import { usePaint } from "../board/index.ts";
import { Choice, useSize } from "../controls/index.ts";
import { hatchOfItem } from "../drawings/index.ts";
import { type Selection, useDesign, useView } from "../stores/index.ts";
import { boxOfSolids } from "./box-of-solids.ts";
import { type Camera, cameraOf, type ViewName, viewNames, zoomed } from "./camera.ts";
import { LookLabels } from "./LookLabels.tsx";
import { LookSliders } from "./LookSliders.tsx";
import { wishOfKey } from "./look-keys.ts";
import type { LookState } from "./stage-of-look.ts";
import { useCamera } from "./use-camera.ts";
import { useGestures } from "./use-gestures.ts";
import { useSolids } from "./use-solids.ts";
import { useStage } from "./use-stage.ts";
import "./look.css";

const VIEWS: Readonly<Record<ViewName, { readonly word: string; readonly explains: string }>> = {
  home: { word: "Whole", explains: "See all of it from the front left (key 0)" },
  front: { word: "Front", explains: "From the front, looking rearward" },
  side: { word: "Side", explains: "From the left side, the front on the left" },
  above: { word: "Above", explains: "Straight down, as in the plan" },
  below: { word: "Below", explains: "From the ground" },
};

/** The tray in 3D: turned by mouse, touch and keys; drawn apart; its sheets bent back to their flat patterns. */
export default function LookView() {
  const design = useDesign((state) => state.design);
  const project = design?.project;
  return design && project ? <LookOf project={project} jig={design.jig} /> : null;
}

type ShownStand = "none" | "jig" | "cradle";

type Project = Parameters<typeof useSolids>[0];

function LookOf({ project, jig }: { readonly project: Project; readonly jig: Jig }) {
  const all = useSolids(project);
  const [stand, setStand] = useState<ShownStand>("none");
  const solids = useMemo(() => all?.filter((solid) => (solid.stand ?? stand) === stand), [all, stand]);
  const hasCradle = (all ?? []).some((solid) => solid.stand === "cradle");
  const selection = useView((view) => view.selection);
  const select = useView((view) => view.select);
  const paint = usePaint();
  const [bend, setBend] = useState(1);
  const [bends, setBends] = useState<LookState["bends"]>("all");
  const [apart, setApart] = useState(0);
  const { ref: frame, widthPx, heightPx } = useSize<HTMLDivElement>();
  const canvas = useRef<HTMLCanvasElement>(null);
  const turnedAtMm = turnedLevel(jig, stand);
  const box = useMemo(() => turnedBox(boxOfSolids(solids ?? []), turnedAtMm), [solids, turnedAtMm]);
  const aspect = widthPx > 0 && heightPx > 0 ? widthPx / heightPx : 1;
  const { camera, look, glide } = useCamera(
    () => cameraOf("home", box, aspect),
    solids !== undefined,
    aspect,
  );
  const chosenPart = chosenPartOf(selection, solids ?? []);
  const isChosen = useCallback((solid: Solid) => isChosenIn(selection, solid), [selection]);
  const tintOf = useCallback((solid: Solid) => hatchOfItem(project, solid.itemId), [project]);
  const state: LookState = { camera, bend, bends, apart, turnedAtMm, isChosen, tintOf, paint };
  const { stage, labels, hasNoWebGl } = useStage(canvas, { solids, state, widthPx, heightPx });
  const goTo = (view: ViewName) => glide(cameraOf(view, box, aspect));
  const pick = (xPx: number, yPx: number) => {
    const solid = stage()?.partAt(xPx, yPx);
    if (solid?.kind !== "rib") select(solid && { kind: "part", partId: solid.partId });
    else if (solid.id === solid.partId) select({ kind: "rib", ribId: solid.partId });
  };
  const gestures = useGestures(frame, { camera, look, pick, heightPx });
  const parts = new Set((solids ?? []).filter(({ kind }) => kind !== "rib").map(({ partId }) => partId)).size;

  if (hasNoWebGl)
    return (
      <p className="empty" data-testid="look-missing">
        This browser cannot show the tray in 3D (it has no WebGL, or it is switched off); drawing, flat parts
        and pages are all there without it.
      </p>
    );
  return (
    <div className="look" data-testid="look">
      <div className="look-views" role="toolbar" aria-label="Where the tray is looked at from">
        {viewNames.map((view) => (
          <button
            key={view}
            type="button"
            className="plain"
            title={VIEWS[view].explains}
            data-testid={`look-from-${view}`}
            onClick={() => goTo(view)}
          >
            {VIEWS[view].word}
          </button>
        ))}
        <button
          type="button"
          className="plain"
          aria-label="Nearer"
          onClick={() => look(zoomed(camera, 1.25))}
        >
          +
        </button>
        <button
          type="button"
          className="plain"
          aria-label="Farther"
          onClick={() => look(zoomed(camera, 0.8))}
        >
          −
        </button>
      </div>
      <div
        ref={frame}
        className="look-picture"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: an application takes keys of its own.
        tabIndex={0}
        aria-label={`The tray in 3D, ${parts} ${parts === 1 ? "part" : "parts"}${chosenPart ? `, ${chosenPart} chosen` : ""}`}
        aria-describedby="look-keys"
        data-testid="look-picture"
        data-camera={wordCamera(camera)}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return;
          const wish = wishOfKey(camera, event);
          if (!wish) return;
          event.preventDefault();
          if ("view" in wish) goTo(wish.view);
          else look(wish.camera);
        }}
        {...gestures}
      >
        <canvas ref={canvas} />
        <LookLabels labels={labels} />
        {solids === undefined ? <p className="empty">The parts are being put together.</p> : null}
        {solids?.length === 0 ? (
          <p className="empty">The parts stand here as soon as a section is drawn and has a profile.</p>
        ) : null}
      </div>
      <p id="look-keys" className="visually-hidden">
        Arrow keys turn the tray, with Shift they move it; plus and minus go nearer and away, 0 shows all of
        it. Drag to turn, drag with Shift or with two fingers to move, click on a part to choose it.
      </p>
      <Choice
        label="Standing on"
        value={stand}
        testId="look-stand"
        options={[
          { value: "none", word: "Nothing" },
          { value: "jig", word: "Its jig" },
          ...(hasCradle ? [{ value: "cradle" as const, word: "Its cradle" }] : []),
        ]}
        onChange={setStand}
      />
      <LookSliders
        bend={bend}
        onBend={setBend}
        apart={apart}
        onApart={setApart}
        chosen={chosenPart}
        bends={bends}
        onBends={setBends}
      />
    </div>
  );
}

/** Where the tray lies upside down it is shown so, its baseboard on the ground. */
function turnedLevel(jig: Jig, stand: ShownStand): number | undefined {
  const baseboard = stand === "jig" ? jig.baseboard : stand === "cradle" ? jig.cradle?.baseboard : undefined;
  return baseboard?.attitude === "inverted" ? baseboard.levelZMm : undefined;
}

function turnedBox(box: ReturnType<typeof boxOfSolids>, levelMm: number | undefined): typeof box {
  if (levelMm === undefined) return box;
  const { least, most } = box;
  return {
    least: { x: least.x, y: -most.y, z: Math.min(0, levelMm - most.z) },
    most: { x: most.x, y: -least.y, z: levelMm - least.z },
  };
}

function isChosenIn(selection: Selection | undefined, { partId, itemId }: Solid): boolean {
  if (selection?.kind === "rib") return selection.ribId === partId;
  if (selection?.kind === "part") return selection.partId === partId;
  return selection?.kind === "item" && selection.itemId === itemId;
}

/** The codes of what is chosen: a part, or all that is made of an item. */
function chosenPartOf(selection: Selection | undefined, solids: readonly Solid[]): string | undefined {
  const codes = new Set(solids.filter((solid) => isChosenIn(selection, solid)).map(({ partId }) => partId));
  return codes.size > 0 ? [...codes].join(", ") : undefined;
}

/** For whoever watches the page from outside: degrees round and up, and the distance. */
const wordCamera = ({ azimuthRad, elevationRad, distanceMm }: Camera): string =>
  [(azimuthRad * 180) / Math.PI, (elevationRad * 180) / Math.PI, distanceMm]
    .map((value) => value.toFixed(1))
    .join(" ");
