import { type KeyboardEvent, type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";
import { allDeeds, type Deed, hintOf, isPossibleNow, KeyNames, wordNowOf } from "../deeds/index.ts";
import { sightNow } from "../hand/index.ts";
import { useDocument, usePlaceMenu, useView } from "../stores/index.ts";
import { nameOfSelection } from "../tools/index.ts";
import { deedsHere } from "./deeds-here.ts";
import "./place-menu.css";

/** Room between the menu and the edge of the screen, px. */
const MARGIN_PX = 8;

/** What can be done with what lies at a place of the drawing: by long press, right button, or key. */
export function PlaceMenu() {
  const at = usePlaceMenu((menu) => menu.at);
  return at ? <OpenMenu key={`${at.xPx}/${at.yPx}`} xPx={at.xPx} yPx={at.yPx} /> : null;
}

function OpenMenu({ xPx, yPx }: { readonly xPx: number; readonly yPx: number }) {
  const menu = useRef<HTMLDivElement>(null);
  const [shift, setShift] = useState({ leftPx: xPx, topPx: yPx });
  const { close } = usePlaceMenu.getState();
  const { selection } = useView.getState();
  const isOnSomething = selection !== undefined || sightNow().typing !== undefined;
  const [deeds] = useState(() => deedsHere(allDeeds.filter(isPossibleNow), isOnSomething));
  const name = nameOfSelection(useDocument.getState().project, selection);

  useLayoutEffect(() => {
    const element = menu.current;
    if (!element) return;
    element.showPopover();
    const { width, height } = element.getBoundingClientRect();
    setShift({
      leftPx: Math.max(MARGIN_PX, Math.min(xPx, innerWidth - width - MARGIN_PX)),
      topPx: Math.max(MARGIN_PX, Math.min(yPx, innerHeight - height - MARGIN_PX)),
    });
    itemsOf(element)[0]?.focus();
  }, [xPx, yPx]);
  usePressElsewhere(menu, close);

  const leave = () => {
    close();
    document.querySelector<HTMLElement>(".drawing")?.focus();
  };
  const run = (deed: Deed) => {
    leave();
    deed.run();
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const items = itemsOf(event.currentTarget);
    const now = items.findIndex((item) => item.matches(":focus"));
    const step = STEPS[event.key];
    if (step !== undefined) items[(now + step + items.length) % items.length]?.focus();
    else if (event.key === "Home") items[0]?.focus();
    else if (event.key === "End") items.at(-1)?.focus();
    else if (event.key === "Escape" || event.key === "Tab") leave();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div
      ref={menu}
      className="place-menu"
      popover="manual"
      role="menu"
      tabIndex={-1}
      aria-label={name === undefined ? "What can be done here" : `What can be done with ${name}`}
      style={{ left: shift.leftPx, top: shift.topPx }}
      data-testid="place-menu"
      onKeyDown={onKeyDown}
    >
      <p className="caption" role="presentation">
        {name ?? "On bare paper"}
      </p>
      {deeds.map((deed) => (
        <button
          key={deed.name}
          type="button"
          role="menuitem"
          className="plain"
          title={hintOf(deed)}
          data-testid={`here-${deed.name}`}
          onClick={() => run(deed)}
        >
          <deed.icon aria-hidden />
          {wordNowOf(deed)}
          <KeyNames names={deed.keys.slice(0, 1)} />
        </button>
      ))}
    </div>
  );
}

const STEPS: Readonly<Record<string, 1 | -1>> = { ArrowDown: 1, ArrowUp: -1 };

const itemsOf = (menu: HTMLElement): readonly HTMLElement[] => [
  ...menu.querySelectorAll<HTMLElement>("[role=menuitem]"),
];

/** A press anywhere else shuts the menu; the finger that opened it is still down and counts for nothing. */
function usePressElsewhere(menu: RefObject<HTMLElement | null>, close: () => void): void {
  useEffect(() => {
    const onDown = (event: PointerEvent) => {
      if (event.target instanceof Node && menu.current?.contains(event.target)) return;
      close();
    };
    window.addEventListener("pointerdown", onDown, true);
    window.addEventListener("resize", close);
    return () => {
      window.removeEventListener("pointerdown", onDown, true);
      window.removeEventListener("resize", close);
    };
  }, [menu, close]);
}
