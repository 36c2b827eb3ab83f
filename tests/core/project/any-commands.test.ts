import fc from "fast-check";
import { expect, it } from "vitest";
import {
  applyCommand,
  type Command,
  checkDocument,
  type LineRef,
  nameOfCommand,
  newFence,
  newSection,
  type Project,
  readProject,
  resolveLines,
  soundProject,
  writeProject,
} from "../../../core/project/index.ts";
import { plan, rectangle, side, twoSections } from "./small-projects.ts";

/** Printed by the property when it fails, and the same at every run. */
const SEED = 20261125;
/** A hundred documents take a second; a machine that does much else at once takes longer. */
const LOADED_MACHINE_MS = 60_000;

const itemId = fc.constantFrom("one", "two", "fence", "none");
const nodeId = fc.constantFrom("a", "b", "c", "d", "e", "f", "l", "m", "p", "q", "d1", "d2", "shared", "new");
const number = fc.oneof(
  fc.integer({ min: -50, max: 1100 }),
  fc.constantFrom(0, 0.001, 1e9, Number.NaN, Number.NEGATIVE_INFINITY),
);
const next = fc.constantFrom("line", "curve");
const line: fc.Arbitrary<LineRef> = fc.oneof(
  itemId.map((id): LineRef => ({ of: "item", itemId: id })),
  itemId.map((id): LineRef => ({ of: "lower-edge", itemId: id })),
  fc.constant<LineRef>({ of: "profile", profileId: "flat" }),
);
const edge = fc.record({
  itemId,
  fromNodeId: nodeId,
  toNodeId: nodeId,
  hand: fc.constantFrom("right", "left"),
});

const command: fc.Arbitrary<Command> = fc.oneof(
  fc.record({ kind: fc.constant("move-node"), line, nodeId, to: fc.tuple(number, number) }),
  fc.record({
    kind: fc.constant("change-node"),
    line,
    nodeId,
    changes: fc.record({ next, radiusMm: number, tangentInRad: number }, { requiredKeys: [] }),
  }),
  fc.record({
    kind: fc.constant("split-segment"),
    line,
    afterNodeId: nodeId,
    t: fc.double({ min: -0.1, max: 1.1 }),
    newNodeId: nodeId,
  }),
  fc.record({ kind: fc.constant("delete-node"), line, nodeId }),
  fc.record({
    kind: fc.constant("append-node"),
    line,
    node: fc.record({ id: nodeId, x: number, y: number }).map(({ id, x, y }) => plan(id, x, y)),
  }),
  fc.record({
    kind: fc.constant("append-node"),
    line,
    node: fc.record({ id: nodeId, x: number, z: number }).map(({ id, x, z }) => side(id, x, z)),
  }),
  fc.record({ kind: fc.constant("close-outline"), itemId }),
  fc.record({
    kind: fc.constant("follow-edge"),
    itemId,
    afterNodeId: nodeId,
    beforeNodeId: nodeId,
    edge,
    direction: fc.constantFrom("along", "against"),
    newId: fc.constantFrom("shared", "other"),
  }),
  fc.record({ kind: fc.constant("unfollow-edge"), itemId, followId: fc.constantFrom("shared", "other") }),
  fc.record({ kind: fc.constant("delete-item"), itemId }),
  fc.record({
    kind: fc.constant("change-section"),
    itemId,
    changes: fc.record({ tiltRad: number, profileId: fc.constantFrom("flat", "none") }, { requiredKeys: [] }),
  }),
  fc.record({
    kind: fc.constant("add-section"),
    section: itemId.map((id) =>
      newSection({
        id,
        number: 1,
        name: "",
        profileId: "flat",
        elements: rectangle(0, 500, 500, 600),
        closed: true,
      }),
    ),
  }),
) as fc.Arbitrary<Command>;

function start(): Project {
  const project = twoSections();
  const fence = newFence({
    id: "fence",
    number: 1,
    name: "",
    elements: [plan("a", 100, 100), plan("b", 900, 100)],
  });
  return { ...project, items: [...project.items, fence] };
}

it(
  "whatever is done to a document, it can be checked, resolved, named, written and read back",
  () => {
    fc.assert(
      fc.property(fc.array(command, { maxLength: 12 }), (commands) => {
        const end = commands.reduce((project, one) => {
          expect(nameOfCommand(project, one)).not.toBe("");
          return applyCommand(project, one);
        }, start());
        checkDocument(end);
        const lines = resolveLines(soundProject(end));
        const lengths = [...Object.values(lines.plan), ...Object.values(lines.profiles)].map(
          ({ lengthMm }) => lengthMm,
        );
        expect(lengths.every((length) => length > 0 && length < 1e7)).toBe(true);
        expect(readProject(writeProject(end))).toEqual({ ok: true, project: end });
      }),
      { seed: SEED, numRuns: 100 },
    );
  },
  LOADED_MACHINE_MS,
);
