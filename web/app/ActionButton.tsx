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
  const hint = action.keys.length > 0 ? `${action.explains} (${action.keys.join(", ")})` : action.explains;
  return (
    <button
      type="button"
      className="plain"
      disabled={!isEnabled}
      title={hint}
      data-testid={`action-${action.name}`}
      onClick={action.run}
    >
      <Icon aria-hidden />
      <span className="button-word">{action.word}</span>
    </button>
  );
}
