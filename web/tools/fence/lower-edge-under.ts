import { interpolate2, type Vec2 } from "../../../core/foundation/index.ts";
import type { Fence } from "../../../core/project/index.ts";
import { isInside } from "../nearest.ts";
import { findLine, type SceneLine } from "../scene.ts";
import type { ToolContext } from "../types.ts";

/** How far a new fence hangs below the profile that it is drawn under. */
const NEW_DEPTH_MM = 40;
/** It ends this far above the ground at least. */
const LEAST_CLEARANCE_MM = 5;

/**
 * Heights for the lower edge of a new fence: 40 mm under the profile of the section around its line, with a node
 * under each of the profile's own. Undefined where the line turns back in x or lies under no section: such a
 * fence is given depths instead.
 */
export function lowerEdgeUnder(
  line: readonly Vec2[],
  context: ToolContext,
): Extract<Fence["lowerEdge"], { kind: "heights" }> | undefined {
  const profile = profileAround(line, context);
  const xs = line.map((at) => at[0]);
  if (!profile || !(isRising(xs) || isRising([...xs].reverse()))) return undefined;
  const fromX = Math.min(...xs);
  const toX = Math.max(...xs);
  const between = profile.nodes.map((node) => node.at[0]).filter((x) => x > fromX && x < toX);
  const nodes = [fromX, ...between, toX].flatMap((x, index) => {
    const z = heightOn(profile, x);
    return z === undefined
      ? []
      : [
          {
            kind: "node" as const,
            id: `n${index + 1}`,
            x,
            // A whole millimetre is as good a start, and reads as it was meant.
            z: Math.max(LEAST_CLEARANCE_MM, Math.round(z - NEW_DEPTH_MM)),
            next: "line" as const,
          },
        ];
  });
  return nodes.length === between.length + 2 ? { kind: "heights", nodes } : undefined;
}

const isRising = (values: readonly number[]): boolean =>
  values.every((value, index) => index === 0 || value > (values[index - 1] ?? value));

function profileAround(line: readonly Vec2[], { project, scene }: ToolContext): SceneLine | undefined {
  const first = line[0];
  const second = line[1];
  if (!first || !second) return undefined;
  const middle = interpolate2(first, second, 0.5);
  const section = project.items.find((item) => {
    const outline = findLine(scene, { of: "item", itemId: item.id });
    return item.kind === "section" && outline !== undefined && isInside(outline, middle);
  });
  return section?.kind === "section"
    ? findLine(scene, { of: "profile", profileId: section.profileId })
    : undefined;
}

/** Height of a profile at x, from its drawn points. */
function heightOn(profile: SceneLine, x: number): number | undefined {
  for (const edge of profile.edges) {
    for (const { points } of edge.stretches) {
      for (let index = 1; index < points.length; index += 1) {
        const from = points[index - 1];
        const to = points[index];
        if (!from || !to || x < from[0] || x > to[0] || from[0] === to[0]) continue;
        return interpolate2(from, to, (x - from[0]) / (to[0] - from[0]))[1];
      }
    }
  }
  return undefined;
}
