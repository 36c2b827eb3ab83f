import type { OrderWish } from "../../../core/project/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

/** What the builder asks of the order, to be taken back. Nothing where nothing is asked. */
export function OrderSettings() {
  const { project, change } = useSettings();
  const wishes = project.glue.order ?? [];
  if (wishes.length === 0) return null;
  const { order: _order, ...rest } = project.glue;
  const keep = (order: readonly OrderWish[]) =>
    change({ glue: order.length > 0 ? { ...rest, order } : rest });
  return (
    <SettingsGroup title="Your order">
      <ul className="lost-days" data-setting="glue.order" tabIndex={-1} data-testid="wishes">
        {wishes.map((wish) => (
          <li key={JSON.stringify(wish)}>
            {wishWords(wish)}{" "}
            <button type="button" onClick={() => keep(wishes.filter((other) => other !== wish))}>
              Take back
            </button>
          </li>
        ))}
      </ul>
      <button type="button" onClick={() => keep([])}>
        Take all back
      </button>
    </SettingsGroup>
  );
}

function wishWords(wish: OrderWish): string {
  switch (wish.kind) {
    case "first":
      return `${wish.unitId} first`;
    case "last":
      return `${wish.unitId} last`;
    case "after":
      return `${wish.unitId} not before ${wish.otherId}`;
    case "apart":
      return `${wish.unitId} not in one step with ${wish.otherId}`;
  }
}
