import { ArrowLeft, ArrowRight, Sun, TriangleAlert, X } from "lucide-react";
import { type KeyboardEvent, type MouseEvent, useEffect, useMemo, useRef, useState } from "react";
import type { Design } from "../../core/design.ts";
import { ClockRows } from "../clocks/index.ts";
import { useDesign, useView } from "../stores/index.ts";
import { BenchCardView } from "./BenchCardView.tsx";
import { benchCards, type Chapter, Chapters } from "./bench-cards.ts";
import { useScreenAwake, type Wakefulness } from "./use-screen-awake.ts";
import "./bench.css";

const ChapterNames: readonly Chapter[] = ["marks", "ribs", "glue", "skins"];

/** Big print for the bench: one card at a time, gone on by a knuckle; nothing in it can be changed. */
export function BenchMode() {
  const design = useDesign((state) => state.design);
  return design ? <Bench design={design} /> : null;
}

function Bench({ design }: { readonly design: Design }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const sheet = useRef<HTMLElement>(null);
  const cards = useMemo(() => benchCards(design), [design]);
  const [wanted, setWanted] = useState(0);
  const at = Math.max(0, Math.min(wanted, cards.length - 1));
  const card = cards[at];
  const awake = useScreenAwake();
  const close = () => useView.getState().setOverlay(undefined);
  const goTo = (index: number) => {
    setWanted(Math.max(0, Math.min(index, cards.length - 1)));
    sheet.current?.scrollTo(0, 0);
  };
  const go = (by: number) => goTo(at + by);
  useEffect(() => {
    const element = dialog.current;
    if (element && !element.open) element.showModal();
    sheet.current?.focus();
    return () => element?.close();
  }, []);
  const onKeyDown = (event: KeyboardEvent) => {
    // Not even undo is heard behind it.
    event.stopPropagation();
    const by = KEYS[event.key];
    if (by === undefined) return;
    event.preventDefault();
    go(by);
  };
  /** A tap on the right half goes on, on the left half back; a choice of words is no tap. */
  const onTap = (event: MouseEvent<HTMLElement>) => {
    if ((getSelection()?.toString() ?? "") !== "") return;
    const { left, width } = event.currentTarget.getBoundingClientRect();
    go(event.clientX < left + width / 2 ? -1 : 1);
  };
  return (
    <dialog
      ref={dialog}
      className="bench"
      aria-label="Bench mode"
      data-testid="bench"
      onKeyDown={onKeyDown}
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
    >
      <header>
        <div className="bench-chapters" role="group" aria-label="Chapters">
          {ChapterNames.map((chapter) => {
            const first = cards.findIndex((one) => one.chapter === chapter);
            return (
              <button
                key={chapter}
                type="button"
                className="plain"
                disabled={first < 0}
                aria-pressed={card?.chapter === chapter}
                data-testid={`bench-${chapter}`}
                onClick={() => goTo(first)}
              >
                {Chapters[chapter]}
              </button>
            );
          })}
        </div>
        <button type="button" className="plain" data-testid="bench-leave" onClick={close}>
          <X aria-hidden />
          Leave
        </button>
      </header>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the dialog hears the arrow keys */}
      <section
        ref={sheet}
        className="bench-sheet"
        aria-label="Card"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must scroll by key, too.
        tabIndex={0}
        data-testid="bench-sheet"
        onClick={onTap}
      >
        <div aria-live="polite">{card ? <BenchCardView card={card} design={design} /> : <NoCard />}</div>
      </section>
      <ClockRows />
      <p className="bench-awake" role="status" data-testid="bench-awake" data-state={awake}>
        {AWAKE[awake].isLit ? <Sun aria-hidden /> : <TriangleAlert aria-hidden />}
        {AWAKE[awake].words}
      </p>
      <footer>
        <button type="button" disabled={at === 0} data-testid="bench-previous" onClick={() => go(-1)}>
          <ArrowLeft aria-hidden />
          Back
        </button>
        <p data-testid="bench-place">{`${cards.length === 0 ? 0 : at + 1} of ${cards.length}`}</p>
        <button
          type="button"
          disabled={at >= cards.length - 1}
          data-testid="bench-next"
          onClick={() => go(1)}
        >
          Next
          <ArrowRight aria-hidden />
        </button>
      </footer>
    </dialog>
  );
}

const KEYS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  PageDown: 1,
  ArrowLeft: -1,
  PageUp: -1,
  Home: Number.NEGATIVE_INFINITY,
  End: Number.POSITIVE_INFINITY,
};

const AWAKE: Readonly<Record<Wakefulness, { readonly isLit: boolean; readonly words: string }>> = {
  asking: { isLit: true, words: "Asking for the screen to stay lit." },
  awake: { isLit: true, words: "The screen stays lit." },
  cannot: {
    isLit: false,
    words: "This browser cannot keep the screen lit: set it so in the device's settings.",
  },
  refused: {
    isLit: false,
    words: "The device refused to keep the screen lit, perhaps to spare the battery: set it so there.",
  },
};

const NoCard = () => <p>Nothing to read at the bench yet. Draw a section first.</p>;
