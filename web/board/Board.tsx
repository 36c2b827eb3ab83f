import { type KeyboardEvent, memo, useEffect, useMemo, useRef, useState } from "react";
import { roundTo, type Vec2 } from "../../core/foundation/index.ts";
import { useLengths, useSize } from "../controls/index.ts";
import { DeedButton, viewDeeds } from "../deeds/index.ts";
import { hear, sceneFor, useSight } from "../hand/index.ts";
import { Notes } from "../notes/index.ts";
import { AMomentLater, useDocument, useView, type Viewport } from "../stores/index.ts";
import { usePictureEntry } from "../underlay/index.ts";
import { BoardCanvas } from "./BoardCanvas.tsx";
import { boxForPicture } from "./box-for-picture.ts";
import { CombWords } from "./comb/CombWords.tsx";
import { CutHandles } from "./cut-handles/CutHandles.tsx";
import { DimensionLayer } from "./dimensions/DimensionLayer.tsx";
import { planExtent, sideExtent } from "./extents.ts";
import { PromptStrip } from "./PromptStrip.tsx";
import { type Sheet, viewAt } from "./place-at.ts";
import { ShapeLayer } from "./shaping/ShapeLayer.tsx";
import { usePointer } from "./use-pointer.ts";
import { useTyping } from "./use-typing.ts";
import { fitViews, type Layout, layoutOf, planTransform, sideTransform, type Transform } from "./viewport.ts";
import "./board.css";

/** How many times as tall as it is the side view and the cross-section are drawn. */
const HEIGHT_FACTORS = [1, 2, 4] as const;

/** The drawing board: plan over side view on one x axis, the cross-section at the hairline beside. */
export function Board() {
  const { ref, widthPx, heightPx } = useSize<HTMLDivElement>();
  const [heightFactor, setHeightFactor] = useState<number>(2);
  const sight = useSight();
  const viewport = useView((view) => view.viewport);
  const layout = useMemo(() => layoutOf(widthPx, heightPx), [widthPx, heightPx]);
  const firstField = useRef<HTMLInputElement>(null);

  const sheetNow = (): Sheet => ({ viewport: useView.getState().viewport, layout, heightFactor });
  const pointer = usePointer(ref, sheetNow, hear);
  const pictures = usePictureEntry({
    viewAt: (clientX, clientY) => viewAt(sheetNow(), pxIn(ref.current, clientX, clientY)),
    boxOf: boxForPicture,
  });
  useFit(layout, heightFactor);
  useTyping(firstField);

  const plan = useMemo(() => planTransform(viewport, layout), [viewport, layout]);
  const side = useMemo(() => sideTransform(viewport, layout, heightFactor), [viewport, layout, heightFactor]);
  return (
    <div className="board">
      <PromptStrip sight={sight} hear={hear} first={firstField} leave={() => ref.current?.focus()} />
      <div
        ref={ref}
        className="drawing"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing takes keys
        tabIndex={0}
        role="application"
        aria-label="Drawing board: plan over side view. N and P go from node to node, the arrow keys move it, Enter edits it as numbers."
        data-testid="drawing"
        data-tool-view={sight.view}
        data-snap={sight.snap?.reasons.join("; ")}
        data-plan-transform={JSON.stringify(shownTransform(plan))}
        data-side-transform={JSON.stringify(shownTransform(side))}
        {...pointer}
        {...pictures}
      >
        {widthPx > 0 && heightPx > 0 ? (
          <BoardCanvas {...{ widthPx, heightPx, layout, heightFactor, sight }} />
        ) : null}
        <OnTheDrawing {...{ layout, plan, side, heightFactor }} />
        <Notes
          plan={{ box: layout.plan, transform: plan }}
          side={{ box: layout.side, transform: side }}
          {...{ sight, hear }}
        />
        <HairlineSlider layout={layout} />
      </div>
      <div className="board-buttons" role="group" aria-label="How the drawing is seen">
        <DeedButton deed={viewDeeds.smaller} wordless testId="zoom-out" />
        <DeedButton deed={viewDeeds.larger} wordless testId="zoom-in" />
        <DeedButton deed={viewDeeds.fit} testId="fit" />
        <label className="strip-field">
          <span>heights</span>
          <select
            value={heightFactor}
            data-testid="height-factor"
            onChange={(event) => setHeightFactor(Number(event.currentTarget.value))}
          >
            {HEIGHT_FACTORS.map((factor) => (
              <option key={factor} value={factor}>
                {factor === 1 ? "true" : `${factor} times`}
              </option>
            ))}
          </select>
        </label>
      </div>
    </div>
  );
}

interface OnTheDrawingProps {
  readonly layout: Layout;
  readonly plan: Transform;
  readonly side: Transform;
  readonly heightFactor: number;
}

/** What can be read, clicked and pulled on the drawing: it follows the dragged line a moment later. */
const OnTheDrawing = memo(function OnTheDrawing({ layout, plan, side, heightFactor }: OnTheDrawingProps) {
  return (
    <AMomentLater>
      <CombWords {...{ layout, plan, side }} />
      <ShapeLayer {...{ layout, plan, side }} />
      <CutHandles {...{ layout, heightFactor }} />
      <DimensionLayer {...{ layout, plan, side }} />
    </AMomentLater>
  );
});

/** A place of the page as a place of the board, px. */
function pxIn(board: HTMLElement | null, clientX: number, clientY: number): Vec2 {
  const box = board?.getBoundingClientRect();
  return [clientX - (box?.left ?? 0), clientY - (box?.top ?? 0)];
}

/** For tests and for those who look: where x = 0 and y (or z) = 0 are in the drawing, and its scale. */
const shownTransform = (transform: ReturnType<typeof planTransform>) => ({
  originXPx: roundTo(transform.originXPx, 3),
  originYPx: roundTo(transform.originYPx, 3),
  pixelsPerMm: transform.pxPerMmAcross,
  pixelsPerMmUp: transform.pxPerMmUp,
});

/**
 * Shows everything: when asked, when another document comes, and when the board first has a size. When the window
 * changes its size everything is shown again, unless the hand has gone nearer or elsewhere meanwhile.
 */
function useFit(layout: Layout, heightFactor: number): void {
  const requests = useView((view) => view.fitRequests);
  const generation = useDocument((state) => state.generation);
  const hasSize = layout.plan.heightPx > 0;
  const fitted = useRef<Viewport>(undefined);
  const fitNow = () => {
    const scene = sceneFor(useDocument.getState().project);
    fitted.current = fitViews(layout, planExtent(scene), sideExtent(scene), heightFactor);
    useView.getState().setViewport(fitted.current);
  };
  const now = useRef(fitNow);
  now.current = fitNow;
  useHairlineOnTray(generation);
  const wish = `${requests}/${generation}/${heightFactor}/${hasSize}`;
  useEffect(() => {
    if (!wish.endsWith("/false")) now.current();
  }, [wish]);
  const window = `${innerWidth}/${innerHeight}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: it is the window that has changed
  useEffect(() => {
    if (fitted.current === useView.getState().viewport) now.current();
  }, [window]);
}

/** Another tray whose stations the hairline misses is cut through its middle. */
function useHairlineOnTray(generation: number): void {
  const seen = useRef<number>(undefined);
  useEffect(() => {
    if (seen.current === generation) return;
    seen.current = generation;
    const { left, right } = planExtent(sceneFor(useDocument.getState().project));
    const { hairlineXMm, setHairline } = useView.getState();
    if (hairlineXMm <= left || hairlineXMm >= right) setHairline(roundTo((left + right) / 2, -1));
  }, [generation]);
}

/** The hairline for the keyboard and for those who hear the page: a slider over the ruler. */
function HairlineSlider({ layout }: { readonly layout: Layout }) {
  const hairlineXMm = useView((view) => view.hairlineXMm);
  const setHairline = useView((view) => view.setHairline);
  const lengths = useLengths();
  const onKeyDown = (event: KeyboardEvent) => {
    const step = event.shiftKey ? 10 : 1;
    if (event.key === "ArrowRight" || event.key === "ArrowUp") setHairline(hairlineXMm + step);
    else if (event.key === "ArrowLeft" || event.key === "ArrowDown") setHairline(hairlineXMm - step);
    else return;
    event.preventDefault();
  };
  return (
    <div
      className="hairline-slider"
      style={{ top: layout.ruler.topPx, height: layout.ruler.heightPx }}
      role="slider"
      tabIndex={0}
      aria-label="Hairline: station of the cross-section"
      aria-valuenow={hairlineXMm}
      aria-valuemin={-20000}
      aria-valuemax={20000}
      aria-valuetext={`x ${lengths.show(hairlineXMm)} ${lengths.spoken}`}
      data-testid="hairline"
      onKeyDown={onKeyDown}
    />
  );
}
