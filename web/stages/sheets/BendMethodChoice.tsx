import type { BendZone } from "../../../core/bending/index.ts";
import { formatMm } from "../../../core/foundation/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import type { BendChoice, BendMethod } from "../../../core/project/index.ts";
import { Select } from "../../controls/index.ts";
import { useDocument } from "../../stores/index.ts";

/** As the figures of the bend ask for. */
const BY_FIGURES = "by-figures";

const METHODS: readonly { readonly value: BendMethod; readonly word: string }[] = [
  { value: "bend cold", word: "Bend cold" },
  { value: "closing slots", word: "Slots that close, on the inside" },
  { value: "opening slots", word: "Slots that open, on the outside" },
  { value: "planks", word: "Planks" },
];

/** How one bend is made: as its figures ask for, or as the builder wants it; kept with the item, the same for both hands. */
export function BendMethodChoice({ part, zone }: { readonly part: Part; readonly zone: BendZone }) {
  const dispatch = useDocument((state) => state.dispatch);
  const item = useDocument((state) => state.project.items.find(({ id }) => id === part.itemId));
  const { bend } = zone;
  if (!bend || !item || (item.kind !== "section" && item.kind !== "fence")) return null;
  const choose = (value: string) => {
    const method = METHODS.find((one) => one.value === value)?.value;
    const others = (item.bends ?? []).filter(({ atMm }) => atMm !== bend.chosenAtMm);
    const bends: readonly BendChoice[] = method ? [...others, { atMm: bend.atMm, method }] : others;
    const changes = { bends: bends.length > 0 ? bends : undefined };
    if (item.kind === "section") dispatch({ kind: "change-section", itemId: item.id, changes });
    else dispatch({ kind: "change-fence", itemId: item.id, changes });
  };
  return (
    <Select
      label={`Bend from ${formatMm(zone.fromUMm)} to ${formatMm(zone.toUMm)} mm`}
      value={bend.chosen ?? BY_FIGURES}
      testId="bend-method"
      options={[
        { value: BY_FIGURES, word: `By its figures${bend.chosen ? "" : `: ${zone.verdict}`}` },
        ...METHODS,
      ]}
      onChange={choose}
    />
  );
}
