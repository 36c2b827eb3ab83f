import { describe, expect, it } from "vitest";
import { reportOf } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import { readExample } from "../../read-example.ts";
import { practiceDesign } from "./practice-design.ts";

const MICRO = 1e-6;

describe("report", () => {
  const design = designTray(readExample("hill-climb-floor"));
  const report: unknown = JSON.parse(JSON.stringify(reportOf(design)));

  it("has a part for each sheet and hand under the names that other programs rely on", () => {
    const parts = listAt(report, "parts");
    expect(parts).toHaveLength(design.parts.length);
    for (const part of parts) {
      expect(Object.keys(part)).toEqual(
        expect.arrayContaining([
          "id",
          "name",
          "kind",
          "hand",
          "spaceAreaMm2",
          "flatAreaMm2",
          "edges",
          "outlineMm",
          "holesMm",
          "minRadiusMm",
          "maxStrain",
          "verdict",
          "strips",
        ]),
      );
      for (const edge of listAt(part, "edges"))
        expect(Object.keys(edge)).toEqual(
          expect.arrayContaining(["name", "drawnLengthMm", "spaceLengthMm", "flatLengthMm"]),
        );
      for (const strip of listAt(part, "strips"))
        expect(Object.keys(strip)).toEqual(
          expect.arrayContaining(["id", "outlineMm", "holesMm", "edges", "stations"]),
        );
    }
    expect(listAt(report, "ribs").map((rib) => rib.id)).toEqual(design.jig.ribs.map((rib) => rib.id));
    for (const rib of listAt(report, "ribs"))
      expect(Object.keys(rib)).toEqual(expect.arrayContaining(["id", "runs", "atMm", "heights"]));
    expect(listAt(report, "glueUp")).toHaveLength(design.glueUp.length);
  });

  it("puts every strip under its part, once", () => {
    const ids = listAt(report, "parts").flatMap((part) => listAt(part, "strips").map((strip) => strip.id));
    expect([...ids].sort()).toEqual(design.strips.map((strip) => strip.id).sort());
  });

  it("rounds to a millionth and no coarser", () => {
    reportOf(design).parts.forEach((part, i) => {
      expect(Math.abs(part.flatAreaMm2 - (design.parts[i]?.flatAreaMm2 ?? 0))).toBeLessThanOrEqual(MICRO);
      expect(String(part.flatAreaMm2)).toMatch(/^\d+(\.\d{1,6})?$/);
    });
  });

  it("gives problems with kind, level, words and place", () => {
    const [problem] = reportOf({
      ...practiceDesign(),
      problems: [{ kind: "no-stock-for-part", place: { partId: "S1R" }, name: "S1R", thicknessMm: 12 }],
    }).problems;
    expect(problem).toMatchObject({ kind: "no-stock-for-part", level: "stop", place: { partId: "S1R" } });
    expect(problem?.words).toContain("12.0 mm thick");
  });
});

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields => typeof value === "object" && value !== null;

function listAt(value: unknown, key: string): readonly Fields[] {
  const list: unknown = isFields(value) ? value[key] : undefined;
  return Array.isArray(list) ? list.filter(isFields) : [];
}
