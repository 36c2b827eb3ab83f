import type { CSSProperties } from "react";
import { Board, ChosenPanel } from "../../board/index.ts";
import { Splitter } from "../../controls/index.ts";
import { ChosenAnnounced } from "../../describe/index.ts";
import { PlaceMenu } from "../../place-menu/index.ts";
import { AMomentLater, type PhoneView, usePreferences, useView } from "../../stores/index.ts";
import { Shelf } from "./Shelf.tsx";
import { ToolRail } from "./ToolRail.tsx";

/** Tools, drawing board, and the shelf of flat parts with what is chosen below it. */
export function DrawStage() {
  const { shelfWidthPx, lookWidthPx, drawerHeightPx, hand, prefer } = usePreferences();
  const phoneView = useView((view) => view.phoneView);
  const partsShown = useView((view) => view.partsShown);
  const isLooking = partsShown === "space";
  const widthPx = isLooking ? lookWidthPx : shelfWidthPx;
  const sizes: CSSProperties & Record<`--${string}`, string> = {
    "--shelf-width": `${widthPx}px`,
    "--drawer-height": `${drawerHeightPx}px`,
  };
  return (
    <div
      className="draw"
      data-hand={hand}
      data-phone-view={phoneView}
      data-parts-shown={partsShown}
      style={sizes}
    >
      <ToolRail />
      <AMomentLater>
        <ChosenAnnounced />
      </AMomentLater>
      <PlaceMenu />
      <div className="board-place" data-testid="board">
        <Board />
      </div>
      <Splitter
        label="Width of the shelf"
        runs="upright"
        sizePx={widthPx}
        leastPx={240}
        mostPx={isLooking ? 1100 : 720}
        grows={hand === "right" ? "backward" : "forward"}
        onChange={(px) => prefer(isLooking ? { lookWidthPx: px } : { shelfWidthPx: px })}
      />
      <Splitter
        label="Height of the drawer"
        runs="level"
        sizePx={drawerHeightPx}
        leastPx={48}
        mostPx={640}
        grows="backward"
        onChange={(px) => prefer({ drawerHeightPx: px })}
      />
      <Shelf />
      <section className="chosen" aria-label="What is chosen" data-testid="chosen">
        <AMomentLater>
          <ChosenPanel />
        </AMomentLater>
      </section>
      <PhoneViews />
    </div>
  );
}

const PHONE_VIEWS: readonly { readonly view: PhoneView; readonly word: string }[] = [
  { view: "drawing", word: "Drawing" },
  { view: "parts", word: "Flat parts" },
  { view: "chosen", word: "Chosen" },
];

/** On a phone one view at a time is shown; these words change it. */
function PhoneViews() {
  const phoneView = useView((view) => view.phoneView);
  const setPhoneView = useView((view) => view.setPhoneView);
  return (
    <div className="phone-views">
      {PHONE_VIEWS.map(({ view, word }) => (
        <button
          key={view}
          type="button"
          className="plain"
          aria-pressed={view === phoneView}
          data-testid={`phone-view-${view}`}
          onClick={() => setPhoneView(view)}
        >
          {word}
        </button>
      ))}
    </div>
  );
}
