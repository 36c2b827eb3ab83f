import { useLayoutEffect, useRef, useState } from "react";
import { useHelp } from "./help-store.ts";
import { TermPicture } from "./TermPicture.tsx";
import { type TermName, termOf } from "./terms.ts";
import "./help.css";

/** Room between the card, its mark and the edge of the screen, px. */
const GAP_PX = 8;

/** What the word that was asked for means: it stands beside its mark, and goes by Escape or a press elsewhere. */
export function HelpCard() {
  const asked = useHelp((help) => help.asked);
  return asked ? <Card key={asked.term} term={asked.term} mark={asked.mark} /> : null;
}

function Card({ term, mark }: { readonly term: TermName; readonly mark: HTMLElement }) {
  const card = useRef<HTMLDivElement>(null);
  const leave = useHelp((help) => help.leave);
  const [at, setAt] = useState({ left: 0, top: 0 });
  const { word, sentence, picture } = termOf(term);
  useLayoutEffect(() => {
    const element = card.current;
    if (!element) return;
    element.showPopover();
    const box = mark.getBoundingClientRect();
    const { width, height } = element.getBoundingClientRect();
    const below = box.bottom + GAP_PX;
    const fitsBelow = below + height + GAP_PX <= innerHeight;
    setAt({
      left: Math.max(GAP_PX, Math.min(box.left, innerWidth - width - GAP_PX)),
      top: fitsBelow ? below : Math.max(GAP_PX, box.top - height - GAP_PX),
    });
    element.focus({ preventScroll: true });
    const onToggle = () => {
      if (element.matches(":popover-open")) return;
      leave();
      if (document.activeElement === document.body) mark.focus();
    };
    element.addEventListener("toggle", onToggle);
    return () => element.removeEventListener("toggle", onToggle);
  }, [mark, leave]);
  return (
    <div
      ref={card}
      className="help-card"
      popover="auto"
      role="dialog"
      tabIndex={-1}
      aria-label={`${word}: ${sentence}`}
      style={at}
      data-testid="help-card"
    >
      <TermPicture strokes={picture} />
      <p>
        <b>{word}</b>
        {sentence}
      </p>
    </div>
  );
}
