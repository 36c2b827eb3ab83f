import type { Bought } from "../../../core/project/index.ts";
import { useSettings } from "../settings/index.ts";

type Changes = { readonly [Key in Exclude<keyof Bought, "key">]?: number | undefined };

/** How a line of the shopping list is changed: what is taken away goes back to the usual. Sheets and boards keep their price themselves. */
export function usePrices(): (key: string, changes: Changes) => void {
  const { project, change } = useSettings();
  return (key, changes) => {
    const [kind = "", id] = [key.slice(0, key.indexOf(" ")), key.slice(key.indexOf(" ") + 1)];
    const priced = <Thing extends { readonly id: string; readonly priceEach?: number }>(
      things: readonly Thing[],
    ) => things.map((thing) => (thing.id === id ? withPrice(thing, changes.priceEach) : thing));
    if ("priceEach" in changes && kind === "stock") return change({ stock: priced(project.stock) });
    if ("priceEach" in changes && kind === "board")
      return change({ materials: { ...project.materials, boards: priced(project.materials.boards) } });
    const others = (project.shopping ?? []).filter((entry) => entry.key !== key);
    const known = project.shopping?.find((entry) => entry.key === key);
    const { have, packOf, priceEach } = { ...known, ...changes };
    const entry: Bought = {
      key,
      ...(have !== undefined && { have }),
      ...(packOf !== undefined && { packOf }),
      ...(priceEach !== undefined && { priceEach }),
    };
    return change({ shopping: Object.keys(entry).length > 1 ? [...others, entry] : others });
  };
}

function withPrice<Thing extends { readonly priceEach?: number }>(
  thing: Thing,
  priceEach: number | undefined,
): Thing {
  if (priceEach !== undefined) return { ...thing, priceEach };
  const { priceEach: _, ...free } = thing;
  // Without its price it is the same thing.
  return free as Thing;
}
