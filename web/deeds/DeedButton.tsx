import type { Deed } from "./deed.ts";
import { usePossible } from "./use-possible.ts";

interface DeedButtonProps {
  readonly deed: Deed;
  /** The icon alone is shown; the word is still there for those who hear the page. */
  readonly wordless?: true;
  readonly testId?: string;
}

/** A button for a deed, with its word, and its keys in the hint; off while it would do nothing. */
export function DeedButton({ deed, wordless, testId = `deed-${deed.name}` }: DeedButtonProps) {
  const { isPossible, word } = usePossible(deed);
  const Icon = deed.icon;
  return (
    <button
      type="button"
      className="plain"
      disabled={!isPossible}
      title={hintOf(deed)}
      data-testid={testId}
      onClick={deed.run}
    >
      <Icon aria-hidden />
      <span className={wordless ? "visually-hidden" : "button-word"}>{word}</span>
    </button>
  );
}

/** What a deed does, to what, and with which keys. */
export function hintOf({ explains, about, keys }: Deed): string {
  const what = about?.();
  return `${explains}${what === undefined ? "" : `: ${what}`}${keys.length > 0 ? ` (${keys.join(", ")})` : ""}`;
}
