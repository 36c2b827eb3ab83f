import { describe, expect, it } from "vitest";
import {
  applyCommand,
  emptyProject,
  type LineRef,
  newFence,
  newProfile,
  newSection,
  type Project,
} from "../../../core/project/index.ts";
import { lengthsIn } from "../../../web/lengths/index.ts";
import {
  type Block,
  isBlock,
  nodeTableOf,
  pasteBlock,
  readBlock,
  writeNodeTable,
} from "../../../web/tools/node-table/index.ts";

const mm = lengthsIn("mm");
const inch = lengthsIn("inch");
const OUTLINE: LineRef = { of: "item", itemId: "s1" };
const PROFILE: LineRef = { of: "profile", profileId: "p1" };
const DEPTHS: LineRef = { of: "lower-edge", itemId: "f1" };

const node = (id: string, x: number, y: number) => ({ kind: "node", id, x, y, next: "line" }) as const;
const sideNode = (id: string, x: number, z: number) => ({ kind: "node", id, x, z, next: "line" }) as const;

const tray: Project = [
  {
    kind: "add-section",
    section: newSection({
      id: "s1",
      number: 1,
      name: "Floor",
      profileId: "p1",
      closed: true,
      elements: [node("n1", 0, 10), node("n2", 600, 10), node("n3", 600, 300)],
    }),
    profile: newProfile({
      id: "p1",
      name: "Profile",
      nodes: [sideNode("n1", 0, 60), sideNode("n2", 700, 40)],
    }),
  } as const,
  {
    kind: "add-fence",
    fence: newFence({
      id: "f1",
      number: 1,
      name: "Fence",
      elements: [node("n1", 100, 200), node("n2", 500, 200)],
    }),
  } as const,
].reduce(applyCommand, emptyProject({ id: "t", title: "Tray", issuedOn: "2026-01-01" }));

const blockOf = (text: string, lengths = mm): Block => {
  const read = readBlock(text, lengths);
  if (!read.ok) throw new Error(read.complaints.join(" "));
  return read.block;
};
const complaintsOf = (text: string, lengths = mm) => {
  const read = readBlock(text, lengths);
  return read.ok ? [] : read.complaints;
};

function pasted(line: LineRef, place: Parameters<typeof pasteBlock>[2], text: string): Project {
  const paste = pasteBlock(tray, line, place, blockOf(text));
  if (!paste.ok) throw new Error(paste.complaints.join(" "));
  return paste.commands.reduce(applyCommand, tray);
}
const valuesOf = (project: Project, line: LineRef) =>
  nodeTableOf(project, line).rows.map(({ values }) => values);

describe("a block of a spreadsheet", () => {
  it("is more than one cell", () => {
    expect(isBlock("12\t13")).toBe(true);
    expect(isBlock("12\r\n13\r\n")).toBe(true);
    expect(isBlock("12,5\r\n")).toBe(false);
    expect(isBlock("1250/2-18")).toBe(false);
  });

  it("is read with decimal commas, units, sums, a heading and a true minus sign", () => {
    expect(blockOf("x mm\ty mm\r\n12,5\t\u22123\r\n1250/2-18\t2 cm\r\n")).toEqual([
      [12.5, -3],
      [607, 20],
    ]);
    expect(blockOf("12,5;3\n4;5,5")).toEqual([
      [12.5, 3],
      [4, 5.5],
    ]);
    expect(blockOf("100, 20\n200, 30")).toEqual([
      [100, 20],
      [200, 30],
    ]);
    expect(blockOf("100.5 20\n200 30")).toEqual([
      [100.5, 20],
      [200, 30],
    ]);
  });

  it("is in the builder's inches unless its heading says mm", () => {
    expect(blockOf("3 5/16\t1\n", inch)).toEqual([[84.1375, 25.4]]);
    expect(blockOf("x mm\ty mm\n3\t1\n", inch)).toEqual([[3, 1]]);
    expect(blockOf("x in\ty in\n3\t1\n", mm)).toEqual([[76.2, 25.4]]);
  });

  it("says by row what is no length", () => {
    expect(complaintsOf("1\t2\n3\tabc\n\n#REF!\t4\n")).toEqual([
      "Row 2: “abc” is no length.",
      "Row 4: “#REF!” is no length.",
    ]);
    expect(complaintsOf("a\tb\n")).toEqual(["There are no numbers in what was pasted."]);
    expect(complaintsOf("100,20\n200,30")[0]).toContain("can part two columns or be a decimal sign");
    expect(complaintsOf("1\t2\n".repeat(5001))[0]).toContain("at most 5000 nodes");
    expect(complaintsOf("1\tx1y\n".repeat(9)).at(-1)).toBe("And 4 more.");
  });
});

describe("a block laid over a table of nodes", () => {
  it("fills the cells from the one in hand on", () => {
    const project = pasted(OUTLINE, { nodeId: "n2", column: "x" }, "650\t15\n655\t310");
    expect(valuesOf(project, OUTLINE)).toEqual([
      [0, 10, undefined],
      [650, 15, undefined],
      [655, 310, undefined],
    ]);
  });

  it("a single column lands in its own column", () => {
    const project = pasted(OUTLINE, { nodeId: "n1", column: "y" }, "11\n12\n13");
    expect(valuesOf(project, OUTLINE).map((values) => values?.[1])).toEqual([11, 12, 13]);
  });

  it("rows past the end are new nodes", () => {
    const project = pasted(PROFILE, { nodeId: "n2", column: "x" }, "800\t45\n1200\t60\n1600\t110");
    expect(valuesOf(project, PROFILE)).toEqual([
      [0, 60, undefined],
      [800, 45, undefined],
      [1200, 60, undefined],
      [1600, 110, undefined],
    ]);
    const ids = nodeTableOf(project, PROFILE).rows.map(({ id }) => id);
    expect(new Set(ids).size).toBe(4);
  });

  it("depths of a fence are filled and added likewise", () => {
    const project = pasted(DEPTHS, { nodeId: "d1", column: "along" }, "0\t30\n200\t35\n400\t50");
    expect(valuesOf(project, DEPTHS)).toEqual([
      [0, 30],
      [200, 35],
      [400, 50],
    ]);
  });

  it("an empty cell leaves what is there, a radius is taken along", () => {
    const project = pasted(OUTLINE, { nodeId: "n1", column: "x" }, "5\t\t40\n\t20\t");
    expect(valuesOf(project, OUTLINE).slice(0, 2)).toEqual([
      [5, 10, 40],
      [600, 20, undefined],
    ]);
  });

  it.each([
    ["1\t2\t3\t4", "x", "4 columns were pasted"],
    ["1\t2", "radius", "2 columns were pasted"],
    ["1\n2\n3\n4", "x", "Row 4 would be a new node, and has no y."],
  ] as const)("%j from column %s does not fit and changes nothing", (text, column, complaint) => {
    const paste = pasteBlock(tray, OUTLINE, { nodeId: "n1", column }, blockOf(text));
    expect(paste.ok ? "" : paste.complaints[0]).toContain(complaint);
  });

  it("does not write over an edge that follows another", () => {
    const following = applyCommand(tray, {
      kind: "follow-edge",
      itemId: "s1",
      afterNodeId: "n2",
      beforeNodeId: "n3",
      edge: { itemId: "other", fromNodeId: "a", toNodeId: "b", hand: "right" },
      direction: "along",
      newId: "f9",
    });
    const paste = pasteBlock(following, OUTLINE, { nodeId: "n1", column: "x" }, blockOf("1\t2\n3\t4"));
    expect(paste.ok ? "" : paste.complaints[0]).toContain("follows another");
  });
});

describe("a copied table", () => {
  it("has names and units in its first row and plain numbers below", () => {
    expect(writeNodeTable(nodeTableOf(tray, PROFILE), mm, ".")).toBe(
      "node\tx mm\tz mm\tradius mm\n1\t0\t60\t\n2\t700\t40\t\n",
    );
    expect(writeNodeTable(nodeTableOf(tray, PROFILE), inch, ",").split("\n")[2]).toBe(
      "2\t27,559055\t1,574803\t",
    );
  });

  it.each([
    ["mm", "."],
    ["mm", ","],
    ["inch", "."],
  ] as const)("pasted back in %s with %s moves nothing", (units, sign) => {
    const lengths = lengthsIn(units);
    const odd = applyCommand(tray, {
      kind: "move-node",
      line: OUTLINE,
      nodeId: "n2",
      to: [599.123456789, 10],
    });
    const text = writeNodeTable(nodeTableOf(odd, OUTLINE), lengths, sign);
    const paste = pasteBlock(odd, OUTLINE, { nodeId: "n1", column: "x" }, blockOf(text, lengths));
    expect(paste).toEqual({ ok: true, commands: [] });
  });
});
