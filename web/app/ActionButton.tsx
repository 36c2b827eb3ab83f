import type { Action } from "./actions.ts";

/** A button for an action, with its word, and its key in the hint; `about` says what it would be done to. */
export function ActionButton({
  action,
  isEnabled,
  about,
}: {
  readonly action: Action;
  readonly isEnabled: boolean;
  readonly about?: string | undefined;
}) {
  const Icon = action.icon;
  const keys = action.keys.length > 0 ? ` (${action.keys.join(", ")})` : "";
  const hint = `${action.explains}${about === undefined ? "" : `: ${about}`}${keys}`;
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
