import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { emptyProject, readProject, writeProject } from "../../../core/project/index.ts";

const frozen = (version: number) => readFileSync(`tests/core/project/frozen/version-${version}.json`, "utf8");
const empty = emptyProject({ id: "empty", title: "Empty", issuedOn: "2026-01-01" });

/** The text of an empty project with one place of it changed. */
function changed(change: (document: Record<string, unknown>) => void): string {
  const document: Record<string, unknown> = JSON.parse(writeProject(empty));
  change(document);
  return JSON.stringify(document);
}

function refusal(text: string): { readonly reason: string; readonly message: string } {
  const reading = readProject(text);
  if (reading.ok) throw new Error("the file was read");
  return reading;
}

describe("a project file", () => {
  it("that was written is read as the same document", () => {
    expect(readProject(writeProject(empty))).toEqual({ ok: true, project: empty });
  });

  it("has the same bytes every time it is written", () => {
    const text = writeProject(empty);
    const again = readProject(text);
    expect(again.ok && writeProject(again.project)).toBe(text);
    expect(text.endsWith("}\n")).toBe(true);
  });

  it("has its fields in one order, however the document came about", () => {
    const turned = Object.fromEntries(Object.entries(empty).reverse());
    expect(writeProject({ ...turned, ...empty })).toBe(writeProject(empty));
  });

  it("keeps numbers that JSON has no figure for", () => {
    const odd = {
      ...empty,
      core: { foamId: "xps", thicknessMm: Number.NaN },
      skins: { lowerMm: Number.POSITIVE_INFINITY, upperMm: 0 },
    };
    expect(readProject(writeProject(odd))).toEqual({ ok: true, project: odd });
  });

  it("of version 0 reads as its twin of version 1", () => {
    const old = readProject(frozen(0));
    const twin = readProject(frozen(1));
    expect(twin.ok).toBe(true);
    expect(old).toEqual(twin);
  });

  it("of version 1 reads as its twin of version 2, with no openings and no joints but what follows", () => {
    const old = readProject(frozen(1));
    const twin = readProject(frozen(2));
    expect(twin.ok).toBe(true);
    expect(old).toEqual(twin);
    if (!old.ok) throw new Error(old.message);
    expect(old.project.openings).toEqual([]);
    expect(old.project.joints).toEqual({ toleranceMm: 0.5, joined: [], cuts: [] });
    expect(old.project.materials.metals.map(({ id }) => id)).toEqual(["aluminium-soft", "steel-mild"]);
  });

  it("of version 2 reads as its twin of version 3, with no notes and nothing laid under it", () => {
    const old = readProject(frozen(2));
    const twin = readProject(frozen(3));
    expect(twin.ok).toBe(true);
    expect(old).toEqual(twin);
    if (!old.ok) throw new Error(old.message);
    expect([old.project.notes, old.project.underlays]).toEqual([[], []]);
    expect(old.project.items.some((item) => "locked" in item || "hidden" in item)).toBe(false);
  });

  it("of version 3 reads as its twin of version 4, with every bend as its curvature asks", () => {
    const old = readProject(frozen(3));
    const twin = readProject(frozen(4));
    expect(twin.ok).toBe(true);
    expect(old).toEqual(twin);
    if (!old.ok) throw new Error(old.message);
    expect(old.project.bending).toEqual(empty.bending);
    expect(old.project.items.some((item) => "bends" in item)).toBe(false);
  });

  it("of version 4 reads as its twin of version 5, with nothing laid on stock yet", () => {
    const old = readProject(frozen(4));
    const twin = readProject(frozen(5));
    expect(twin.ok).toBe(true);
    expect(old).toEqual(twin);
    if (!old.ok) throw new Error(old.message);
    expect(old.project.laying).toEqual(empty.laying);
    expect(old.project.layouts).toEqual([]);
  });

  it("of version 5 reads as its twin of version 6, without the over-bend that nothing followed", () => {
    const old = readProject(frozen(5));
    const twin = readProject(frozen(6));
    expect(twin.ok).toBe(true);
    expect(old).toEqual(twin);
    if (!old.ok) throw new Error(old.message);
    expect("overBend" in old.project.bending).toBe(false);
  });

  it("of version 0 carries its degrees, its thickness and its rib spacing over", () => {
    const old = readProject(frozen(0));
    if (!old.ok) throw new Error(old.message);
    const swept = old.project.items[1];
    expect(swept?.kind === "section" && swept.headingRad).toBeCloseTo(0.1308996938995747, 15);
    expect(old.project.core).toEqual({ foamId: "xps", thicknessMm: 20 });
    expect(old.project.jig.across).toEqual({ kind: "spacing", spacingMm: 250 });
    expect(old.project.jig.attitude).toBe("upright");
  });

  it("may begin with a byte order mark", () => {
    expect(readProject(`\uFEFF${writeProject(empty)}`).ok).toBe(true);
  });
});

describe("a file that is no project", () => {
  it.each([
    ["an empty file", ""],
    ["a file that is cut off", writeProject(empty).slice(0, 400)],
    ["a picture", "\u0089PNG\r\n"],
  ])("%s is not JSON", (_title, text) => {
    expect(refusal(text).reason).toBe("not-json");
  });

  it.each([
    ["a list", "[]"],
    ["null", "null"],
    ["a number", "7"],
    ["another program's file", '{"format":"something-else","version":1}'],
    ["an object without a format", '{"version":1}'],
  ])("%s is not a project", (_title, text) => {
    expect(refusal(text).reason).toBe("not-a-project");
  });

  it("says so when it comes from a newer version, and names both", () => {
    const { reason, message } = refusal('{"format":"traywright","version":7}');
    expect(reason).toBe("newer-version");
    expect(message).toContain("file version 7, this one reads up to 6");
  });

  it.each([
    ["without a version", (d: Record<string, unknown>) => delete d.version, "does not say which version"],
    ["with half a version", (d: Record<string, unknown>) => (d.version = 0.5), "does not say which version"],
    ["without a jig", (d: Record<string, unknown>) => delete d.jig, "jig is missing"],
    [
      "with a field of its own",
      (d: Record<string, unknown>) => (d.colour = "red"),
      "colour is not known here",
    ],
    [
      "with words for a number",
      (d: Record<string, unknown>) => (d.core = { foamId: "xps", thicknessMm: "thick" }),
      'core.thicknessMm should be a number, and is "thick"',
    ],
    [
      "with null for a number",
      (d: Record<string, unknown>) => (d.core = { foamId: "xps", thicknessMm: null }),
      "core.thicknessMm should be a number, and is null",
    ],
    [
      "with an unknown kind of item",
      (d: Record<string, unknown>) => (d.items = [{ kind: "wing" }]),
      'items[0].kind should be one of "section", "fence", "transition", "plate", and is "wing"',
    ],
    [
      "with an id of spaces",
      (d: Record<string, unknown>) => (d.id = "my tray"),
      "id should be an id of letters, digits, - and _",
    ],
    [
      "with a number where fields belong",
      (d: Record<string, unknown>) => (d.paper = 7),
      "paper should be a group of fields, and is 7",
    ],
  ])("%s is refused with the place of the fault", (_title, change, words) => {
    const { reason, message } = refusal(changed(change));
    expect(reason).toBe("invalid");
    expect(message).toContain(words);
  });

  it("names three faults and counts the rest", () => {
    const { message } = refusal(
      changed((d) => {
        for (const key of ["jig", "glue", "paper", "stock", "core"]) delete d[key];
      }),
    );
    expect(message).toContain("and 2 more");
  });

  it.each([
    ["a version 0 file of nothing", '{"format":"traywright","version":0}'],
    [
      "a version 0 file of rubbish",
      '{"format":"traywright","version":0,"items":[1,null,{"outline":7}],"jig":3,"profiles":{"a":1}}',
    ],
  ])("%s is invalid, and no more", (_title, text) => {
    expect(refusal(text).reason).toBe("invalid");
  });
});
