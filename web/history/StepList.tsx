import { type KeyboardEvent, useEffect, useId, useState } from "react";
import type { HistoryStep } from "../../core/project/index.ts";
import { useMedia, useSize } from "../controls/index.ts";
import { useDocument } from "../stores/index.ts";
import { rowsInView, scrollToRow } from "./rows-in-view.ts";

const ROW_PX = 32;
const TOUCH_ROW_PX = 44;

/**
 * All steps in their order along one line: drawn through as far as the present one, dashed behind it. A click goes
 * to a step; so do the arrow keys, Page Up and Down, Home and End. Only the rows in view are drawn.
 */
export function StepList() {
  const { steps, at } = useDocument((state) => state.history);
  const jump = useDocument((state) => state.jump);
  const isReadOnly = useDocument((state) => state.isReadOnly);
  const id = useId();
  const rowPx = useMedia("(pointer: coarse)") ? TOUCH_ROW_PX : ROW_PX;
  const { ref, heightPx } = useSize<HTMLDivElement>();
  const [topPx, setTop] = useState(0);

  useEffect(() => {
    const list = ref.current;
    if (list && heightPx > 0)
      list.scrollTop = scrollToRow(at, rowPx, { topPx: list.scrollTop, heightPx: list.clientHeight });
  }, [at, rowPx, heightPx, ref]);

  const { first, end } = rowsInView(steps.length, rowPx, { topPx, heightPx });
  const rowsOfPage = Math.max(1, Math.floor(heightPx / rowPx) - 1);
  const onKeyDown = (event: KeyboardEvent) => {
    const to = goalOf(event.key, at, { last: steps.length - 1, rowsOfPage });
    if (to === undefined) return;
    event.preventDefault();
    jump(to);
  };
  return (
    <div
      ref={ref}
      className="steps"
      role="listbox"
      tabIndex={0}
      aria-label="Steps, from the first to the last"
      aria-disabled={isReadOnly || undefined}
      aria-activedescendant={`${id}-${at}`}
      data-testid="steps"
      onScroll={(event) => setTop(event.currentTarget.scrollTop)}
      onKeyDown={onKeyDown}
    >
      <div role="presentation" style={{ height: steps.length * rowPx }}>
        <div role="presentation" style={{ transform: `translateY(${first * rowPx}px)` }}>
          {steps.slice(first, end).map((step, index) => (
            <StepRow
              key={first + index}
              id={`${id}-${first + index}`}
              index={first + index}
              {...{ step, at, count: steps.length, rowPx, jump }}
            />
          ))}
        </div>
      </div>
    </div>
  );
}

interface StepRowProps {
  readonly id: string;
  readonly step: HistoryStep;
  readonly index: number;
  readonly at: number;
  readonly count: number;
  readonly rowPx: number;
  readonly jump: (index: number) => void;
}

function StepRow({ id, step, index, at, count, rowPx, jump }: StepRowProps) {
  const when = index < at ? "done" : index === at ? "now" : "taken-back";
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the list itself takes the keys
    // biome-ignore lint/a11y/useFocusableInteractive: the list has the focus, and names its active option
    <div
      id={id}
      role="option"
      className="step"
      aria-selected={when === "now"}
      aria-setsize={count}
      aria-posinset={index + 1}
      style={{ height: rowPx }}
      title={step.name}
      data-when={when}
      data-testid="step"
      onClick={() => jump(index)}
    >
      <span className="step-mark" aria-hidden />
      <span className="step-name">{step.name}</span>
      {when === "done" ? null : <span className="step-when">{WHEN_WORDS[when]}</span>}
    </div>
  );
}

const WHEN_WORDS = { now: "now", "taken-back": "taken back" } as const;

/** The step that a key goes to from the present one; undefined for other keys. */
function goalOf(
  key: string,
  at: number,
  { last, rowsOfPage }: { readonly last: number; readonly rowsOfPage: number },
): number | undefined {
  const goals: Readonly<Record<string, number>> = {
    ArrowUp: at - 1,
    ArrowDown: at + 1,
    PageUp: at - rowsOfPage,
    PageDown: at + rowsOfPage,
    Home: 0,
    End: last,
  };
  const goal = goals[key];
  return goal === undefined ? undefined : Math.min(last, Math.max(0, goal));
}
