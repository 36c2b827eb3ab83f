import { describe, expect, it } from "vitest";
import {
  applyCommand,
  type BendChoice,
  checkDocument,
  emptyProject,
  type Fence,
  foamOf,
  leastBendRatioOf,
  newFence,
  type Project,
  soundProject,
} from "../../../core/project/index.ts";
import { oneSection, plan, rectangle } from "./small-projects.ts";

const PLANKS: BendChoice = { atMm: 400, method: "planks" };

const bendsOf = (project: Project, id: string) => {
  const item = project.items.find((one) => one.id === id);
  return item?.kind === "section" || item?.kind === "fence" ? item.bends : undefined;
};

describe("a method chosen for a bend", () => {
  const section = applyCommand(oneSection(rectangle(0, 1000, 0, 200)), {
    kind: "change-section",
    itemId: "one",
    changes: { bends: [PLANKS] },
  });

  it("is data of the item, and can be taken away again", () => {
    expect(bendsOf(section, "one")).toEqual([PLANKS]);
    const changes = { bends: undefined };
    const without = applyCommand(section, { kind: "change-section", itemId: "one", changes });
    expect(bendsOf(without, "one")).toBeUndefined();
  });

  it("goes with the profile that is moved", () => {
    const [profile] = section.profiles;
    const line = { of: "profile", profileId: profile?.id ?? "" } as const;
    const motion = { kind: "move", byMm: { x: 130, y: 0, z: 0 } } as const;
    const moved = applyCommand(section, { kind: "transform", grips: [{ line }], motion });
    expect(bendsOf(moved, "one")).toEqual([{ ...PLANKS, atMm: 530 }]);
  });

  it("must stand somewhere", () => {
    const bends = [{ ...PLANKS, atMm: Number.NaN }];
    const odd = applyCommand(section, { kind: "change-section", itemId: "one", changes: { bends } });
    expect(checkDocument(odd).map(({ kind }) => kind)).toContain("number-out-of-range");
  });
});

describe("a fence with a method for a bend", () => {
  const line = [plan("a", 0, 100), plan("b", 300, 100), plan("c", 1000, 100)];
  const fence: Fence = {
    ...newFence({ id: "f", number: 1, name: "Fence", elements: line }),
    bends: [{ atMm: 200, method: "planks" }, PLANKS],
  };
  const project: Project = {
    ...emptyProject({ id: "p", title: "P", issuedOn: "2026-01-01" }),
    items: [fence],
  };
  const split = applyCommand(project, {
    kind: "split-item",
    itemId: "f",
    nodeIds: ["b"],
    half: { id: "g", number: 2, name: "Half" },
  });

  it("keeps its place on the half that it lies on when the fence is split, and when the halves are joined", () => {
    expect(bendsOf(split, "g")).toContainEqual({ atMm: 100, method: "planks" });
    const joined = applyCommand(split, { kind: "join-items", firstId: "f", secondId: "g" });
    expect(bendsOf(joined, "f")).toContainEqual(PLANKS);
    expect(bendsOf(joined, "f")).toContainEqual({ atMm: 200, method: "planks" });
  });
});

describe("a foam that was tested", () => {
  const tested = (radiusMm: number): Project => {
    const empty = emptyProject({ id: "p", title: "P", issuedOn: "2026-01-01" });
    const foams = empty.materials.foams.map((foam) => ({ ...foam, bendTest: { thicknessMm: 20, radiusMm } }));
    return { ...empty, materials: { ...empty.materials, foams } };
  };
  const ratioOf = (project: Project) => {
    const foam = foamOf(project, "xps");
    return foam && leastBendRatioOf(foam);
  };

  it("bends to what its middle was bent to", () => {
    expect(ratioOf(tested(390))).toBe(20);
    expect(ratioOf(emptyProject({ id: "p", title: "P", issuedOn: "2026-01-01" }))).toBe(60);
  });

  it("goes by its ratio where the test cannot be", () => {
    expect(checkDocument(tested(-3)).map(({ kind }) => kind)).toContain("number-out-of-range");
    expect(ratioOf(soundProject(tested(-3)))).toBe(60);
  });
});

describe("settings of bending", () => {
  it("out of their range are replaced by the default, and named", () => {
    const empty = emptyProject({ id: "p", title: "P", issuedOn: "2026-01-01" });
    const odd: Project = {
      ...empty,
      bending: { ...empty.bending, slotWebMm: 0, slotTest: { depthMm: 17, closedRad: -1 } },
    };
    const settings = checkDocument(odd).map(({ place }) => place.setting);
    expect(settings).toEqual(expect.arrayContaining(["bending.slotWebMm", "bending.slotTest.closedRad"]));
    expect(soundProject(odd).bending.slotWebMm).toBe(3);
    expect(soundProject(odd).bending.slotTest?.closedRad).toBeGreaterThan(0);
  });
});
