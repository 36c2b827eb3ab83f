import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { expect, it } from "vitest";
import { designTray, outlinesAhead, shapeTray } from "../../core/design.ts";
import { type FlatPoint, newMemory } from "../../core/foundation/index.ts";
import type { Part } from "../../core/patterns/index.ts";
import { applyCommand, type Command, type LineRef, type Project } from "../../core/project/index.ts";
import { readExample } from "../read-example.ts";

const SEED = 20261125;
const demo = readExample("hill-climb-floor");

/** Every node of the demo that has a place of its own in plan, profile or lower edge. */
const grips = [
  ...demo.items.flatMap((item) => {
    if (item.kind === "transition") return [];
    const line: LineRef = { of: "item", itemId: item.id };
    const elements = item.kind === "fence" ? item.line.elements : item.outline.elements;
    return elements.flatMap((one) =>
      one.kind === "node" ? [{ line, nodeId: one.id, at: [one.x, one.y] as const }] : [],
    );
  }),
  ...demo.profiles.flatMap((profile) =>
    profile.nodes.map((node) => ({
      line: { of: "profile", profileId: profile.id } as const,
      nodeId: node.id,
      at: [node.x, node.z] as const,
    })),
  ),
  ...demo.openings.flatMap((opening) =>
    opening.outline.elements.flatMap((one) =>
      one.kind === "node"
        ? [
            {
              line: { of: "opening", openingId: opening.id } as const,
              nodeId: one.id,
              at: [one.x, one.y] as const,
            },
          ]
        : [],
    ),
  ),
];

/** Foam that takes no bend of the demo cold, so that all of them are slotted or planked. */
const stifferFoams = demo.materials.foams.map((foam) => ({ ...foam, leastBendRatio: 300 }));

/** Each bend of the demo made in each of the ways. */
const bendChoices = designTray(demo).parts.flatMap(({ kind, itemId, zones }) =>
  zones.flatMap(({ bend }) =>
    (["closing slots", "planks"] as const).flatMap((method): readonly Command[] => {
      if (!bend || kind === "transition") return [];
      const changes = { bends: [{ atMm: bend.atMm, method }] };
      return [
        kind === "section"
          ? { kind: "change-section", itemId, changes }
          : { kind: "change-fence", itemId, changes },
      ];
    }),
  ),
);

const by = fc.integer({ min: -4, max: 4 });
const anyCommand: fc.Arbitrary<Command> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.tuple(fc.constantFrom(...grips), by, by).map(
      ([{ line, nodeId, at }, across, up]): Command => ({
        kind: "move-node",
        line,
        nodeId,
        to: [at[0] + across, at[1] + up / 4],
      }),
    ),
  },
  fc.constantFrom<Command>(
    { kind: "change-settings", changes: { core: { foamId: "xps", thicknessMm: 12 } } },
    { kind: "change-settings", changes: { skins: { lowerMm: 1.2, upperMm: 0.6 } } },
    { kind: "change-settings", changes: { symmetry: "none" } },
    { kind: "change-settings", changes: { drawnFace: "neutral" } },
    { kind: "change-settings", changes: { glue: { ...demo.glue, gapMm: 0.4 } } },
    { kind: "change-settings", changes: { cutting: { ...demo.cutting, kerfMm: 1.2, trimMm: 5 } } },
    { kind: "change-settings", changes: { marking: { intervalMm: 80, toleranceMm: 0.3 } } },
    { kind: "change-settings", changes: { jig: { ...demo.jig, attitude: "upright" } } },
    { kind: "change-settings", changes: { joints: { ...demo.joints, joined: [] } } },
    { kind: "change-settings", changes: { stock: demo.stock.slice(0, 1) } },
    { kind: "change-settings", changes: { openingSettings: { webMm: 60 } } },
    { kind: "change-settings", changes: { bending: { ...demo.bending, slotWebMm: 2, sagittaMm: 0.4 } } },
    { kind: "change-settings", changes: { materials: { ...demo.materials, foams: stifferFoams } } },
    ...bendChoices,
    ...demo.items.map((item): Command => ({ kind: "delete-item", itemId: item.id })),
    ...demo.openings.map((opening): Command => ({ kind: "delete-opening", openingId: opening.id })),
  ),
);

/** A command, whether outlines are shown ahead of its design, and whether a newer edit then takes the place of that. */
const edit = fc.record({ command: anyCommand, isAhead: fc.boolean(), isLeftOut: fc.boolean() });

/** As it comes to a worker: the same words, and none of it the same object. */
const posted = (project: Project): Project => structuredClone(project);

it("gives the very design that is computed anew, whatever was changed before and shown ahead", () => {
  fc.assert(
    fc.property(fc.array(edit, { minLength: 2, maxLength: 4 }), (edits) => {
      const memory = newMemory();
      let project = demo;
      let before = designTray(posted(project), memory);
      for (const { command, isAhead, isLeftOut } of edits) {
        project = applyCommand(project, command);
        if (isAhead) outlinesAhead(posted(project), before, memory);
        if (isAhead && isLeftOut) continue;
        const remembered = designTray(posted(project), memory);
        before = remembered;
        expect(isDeepStrictEqual(remembered, designTray(project)), JSON.stringify(edits)).toBe(true);
      }
    }),
    { seed: SEED, numRuns: 6 },
  );
}, 120_000);

it("makes nothing anew of what a change does not touch", () => {
  const memory = newMemory();
  const before = designTray(posted(demo), memory);
  const fence = grips.find(
    ({ line }) =>
      line.of === "item" && demo.items.some((item) => item.kind === "fence" && item.id === line.itemId),
  );
  if (!fence) throw new Error("The demo has a fence.");
  const to = [fence.at[0] + 3, fence.at[1]] as const;
  const moved = applyCommand(demo, { kind: "move-node", line: fence.line, nodeId: fence.nodeId, to });
  const after = designTray(posted(moved), memory);
  const isFence = ({ kind }: { readonly kind: string }) => kind === "fence";
  expect(after.sheets.filter(isFence).some((sheet) => !before.sheets.includes(sheet))).toBe(true);
  expect(
    after.sheets.filter((sheet) => !isFence(sheet)).every((sheet) => before.sheets.includes(sheet)),
  ).toBe(true);
  expect(after.jig).toBe(before.jig);
});

it("gives the very design that is computed anew where ways to bend are chosen, changed and taken back", () => {
  const memory = newMemory();
  const [first, second] = [bendChoices[0], bendChoices.at(-1)];
  if (!first || !second) throw new Error("The demo has bends.");
  const slotted = applyCommand(demo, first);
  const finer = {
    ...slotted,
    bending: { ...slotted.bending, slotKerfMm: 1.5, slotFilling: "open" } as const,
  };
  for (const project of [demo, slotted, finer, applyCommand(finer, second), demo]) {
    const remembered = designTray(posted(project), memory);
    expect(isDeepStrictEqual(remembered, designTray(project))).toBe(true);
  }
}, 120_000);

/** A joint that turns a little while its edge is dragged sets it back a little otherwise: nothing that a screen shows. */
const SCREEN_MM = 0.05;

it("shows ahead the outlines of the dragged item, and of no other, as its design then has them", () => {
  const memory = newMemory();
  let seen = 0;
  for (const { line, nodeId, at } of grips.filter((_, nth) => nth % 3 === 0)) {
    if (line.of !== "item") continue;
    const before = shapeTray(posted(demo), memory);
    const to = [at[0] + 2, at[1]] as const;
    const moved = applyCommand(demo, { kind: "move-node", line, nodeId, to });
    const ahead = outlinesAhead(posted(moved), before, memory);
    const parts = shapeTray(posted(moved)).parts.filter(({ itemId }) => itemId === line.itemId);
    expect(ahead.map(({ id }) => id)).toEqual(parts.map(({ id }) => id));
    for (const [at, part] of parts.entries()) {
      const missMm = farthestMm(cornersOf(part.loops), cornersOf(ahead[at]?.loops ?? []));
      expect(missMm, part.id).toBeLessThan(SCREEN_MM);
    }
    seen += parts.length;
  }
  expect(seen).toBeGreaterThan(6);
});

/** The points of all loops, mm. */
const cornersOf = (loops: Part["loops"]): readonly FlatPoint[] =>
  loops.flatMap(({ edges }) => edges.flatMap(({ points }) => points));

/** The farthest of some points from the nearest line through others, mm. */
const farthestMm = (points: readonly FlatPoint[], others: readonly FlatPoint[]): number =>
  Math.max(...points.map((point) => Math.min(...others.map((a, i) => awayMm(point, a, others[i + 1] ?? a)))));

function awayMm(point: FlatPoint, a: FlatPoint, b: FlatPoint): number {
  const [du, dv] = [b.u - a.u, b.v - a.v];
  const squared = du * du + dv * dv;
  const share = squared === 0 ? 0 : ((point.u - a.u) * du + (point.v - a.v) * dv) / squared;
  const on = Math.min(1, Math.max(0, share));
  return Math.hypot(point.u - a.u - on * du, point.v - a.v - on * dv);
}
