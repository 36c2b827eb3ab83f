import { formatNumber } from "../../foundation/index.ts";
import type { Part } from "../../patterns/index.ts";

/** That ribs are flat under planks, and how far off the drawn curve; nothing where no lying part is made of planks. */
export function wordPlanked(parts: readonly Part[]): readonly string[] {
  const planked = parts.flatMap(({ id, kind, zones }) => {
    const sagittas = zones.flatMap(({ bend, verdict }) =>
      verdict === "planks" ? (bend?.planks ?? []).map(({ sagittaMm }) => sagittaMm) : [],
    );
    return kind === "section" && sagittas.length > 0 ? [{ id, mostMm: Math.max(...sagittas) }] : [];
  });
  if (planked.length === 0) return [];
  const mostMm = Math.max(...planked.map((one) => one.mostMm));
  return [
    `Under the planks of ${planked.map(({ id }) => id).join(", ")} the ribs are flat as these are, ${formatNumber(mostMm, 2)} mm off the drawn curve at most.`,
  ];
}
