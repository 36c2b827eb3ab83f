import type { Action } from "./actions.ts";

/** A button for an action, with its word, and its key in the hint. */
export function ActionButton({
  action,
  isEnabled,
}: {
  readonly action: Action;
  readonly isEnabled: boolean;
}) {
  const Icon = action.icon;
  const hint = `${action.explains} (${action.keys.join(", ")})`;
  return (
    <button
      type="button"
      className="plain"
      disabled={!isEnabled}
      title={hint}
      data-testid={`action-${action.word.toLowerCase().replaceAll(" ", "-")}`}
      onClick={action.run}
    >
      <Icon aria-hidden />
      <span className="button-word">{action.word}</span>
    </button>
  );
}
