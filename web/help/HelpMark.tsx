import { useHelp } from "./help-store.ts";
import { type TermName, termOf } from "./terms.ts";
import "./help.css";

interface HelpMarkProps {
  readonly term: TermName;
  /** The word as it stands in its sentence, to be underlined with dots; a question mark where it is absent. */
  readonly children?: string;
}

/** A mark beside a word of the trade, or the word itself: pressed, it tells in one sentence what the word means. */
export function HelpMark({ term, children }: HelpMarkProps) {
  const explain = useHelp((help) => help.explain);
  const { word } = termOf(term);
  return (
    <button
      type="button"
      className={`plain help-mark${children === undefined ? "" : " in-words"}`}
      aria-label={children === undefined ? `What does ${word} mean?` : `${children}: what it means`}
      aria-haspopup="dialog"
      title={`What does ${word} mean?`}
      data-testid={`help-${term}`}
      onClick={(event) => explain(term, event.currentTarget)}
    >
      {children ?? "?"}
    </button>
  );
}
