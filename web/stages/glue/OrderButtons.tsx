import { ArrowDown, ArrowUp, ArrowUpToLine, Split } from "lucide-react";
import type { Design } from "../../../core/design.ts";
import type { GlueStep } from "../../../core/glue-up/index.ts";
import type { OrderWish } from "../../../core/project/index.ts";
import { useSettings } from "../settings/index.ts";

/** Where the builder puts a sheet in the order: a step earlier or later, first of all, or a pair one by one. */
export function OrderButtons({ step, design }: { readonly step: GlueStep; readonly design: Design }) {
  const { project, change } = useSettings();
  const laid = design.glueUp.filter(isLaid);
  const place = laid.indexOf(step);
  if (!isLaid(step) || laid.length < 2) return null;
  const [before, after] = [laid[place - 1], laid[place + 1]];
  const wish = (...wishes: readonly OrderWish[]) =>
    change({ glue: { ...project.glue, order: withWishes(project.glue.order ?? [], wishes) } });
  const [one, other] = step.adds;
  const isPair = step.adds.length === 2 && one?.slice(0, -1) === other?.slice(0, -1);
  return (
    <div className="order-buttons" role="group" aria-label={`Order of ${step.adds.join(", ")}`}>
      {before ? (
        <button type="button" data-testid="earlier" onClick={() => wish(...notBefore(before, step, design))}>
          <ArrowUp aria-hidden /> Earlier
        </button>
      ) : null}
      {after ? (
        <button type="button" data-testid="later" onClick={() => wish(...notBefore(step, after, design))}>
          <ArrowDown aria-hidden /> Later
        </button>
      ) : null}
      {before ? (
        <button
          type="button"
          onClick={() =>
            wish(...sheetsOf(step, design).map((unitId): OrderWish => ({ kind: "first", unitId })))
          }
        >
          <ArrowUpToLine aria-hidden /> First
        </button>
      ) : null}
      {isPair && one && other ? (
        <button type="button" onClick={() => wish({ kind: "apart", unitId: one, otherId: other })}>
          <Split aria-hidden /> One by one
        </button>
      ) : null}
    </div>
  );
}

const isLaid = ({ kind }: GlueStep): boolean => kind === "lay" || kind === "close";

/** That what comes in one step does not come before what comes in another. */
const notBefore = (later: GlueStep, earlier: GlueStep, design: Design): readonly OrderWish[] =>
  sheetsOf(later, design).flatMap((unitId) =>
    sheetsOf(earlier, design).map((otherId): OrderWish => ({ kind: "after", unitId, otherId })),
  );

/** What comes in a step: a sheet by its own name where all of its strips come in it. */
function sheetsOf({ adds }: GlueStep, { strips }: Design): readonly string[] {
  const partOf = (id: string) => strips.find((strip) => strip.id === id)?.partId ?? id;
  const isWhole = (partId: string) =>
    strips.filter((strip) => strip.partId === partId).every(({ id }) => adds.includes(id));
  return [...new Set(adds.map((id) => (isWhole(partOf(id)) ? partOf(id) : id)))];
}

/** The wishes with newer ones behind them; an older one that asks for the opposite goes. */
function withWishes(old: readonly OrderWish[], newer: readonly OrderWish[]): readonly OrderWish[] {
  const isSame = (a: OrderWish, b: OrderWish) => JSON.stringify(a) === JSON.stringify(b);
  const isOpposite = (a: OrderWish, b: OrderWish) =>
    a.kind === "after" && b.kind === "after" && a.unitId === b.otherId && a.otherId === b.unitId;
  const kept = old.filter((wish) => !newer.some((one) => isSame(one, wish) || isOpposite(one, wish)));
  return [...kept, ...newer];
}
