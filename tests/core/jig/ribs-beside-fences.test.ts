import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import { type Rib, wordInPlace } from "../../../core/jig/index.ts";
import { emptyProject, type Project } from "../../../core/project/index.ts";
import { fence, planNode, rectangle, section, straightProfile, tray } from "../trays.ts";
import { boardOf } from "./wood.ts";

const { jig: plainJig } = emptyProject({ id: "tray", title: "Tray", issuedOn: "2026-01-01" });
type Line = readonly (readonly [x: number, y: number])[];

/** A level floor of 1200 × 800 in 10 mm foam with fences that stand first, on an upright jig with automatic ribs along. */
function trayWith(lines: readonly Line[], jig: Partial<Project["jig"]> = {}): Design {
  const fences = lines.map((line, i) =>
    fence(
      i + 1,
      line.map(([x, y], k) => planNode(`n${k}`, x, y)),
      { standsFirst: true },
    ),
  );
  return designTray({
    ...tray(
      { p: straightProfile(-100, 100, 1400, 100) },
      [section(1, rectangle(0, 1200, 0, 400)), ...fences],
      { symmetry: "mirrored", thicknessMm: 10 },
    ),
    jig: { ...plainJig, attitude: "upright", across: { kind: "none" }, along: { kind: "automatic" }, ...jig },
  });
}

/** Half of foam and both skins. */
const HALF_MM = (10 + 1.6) / 2;

/** How near the wood of a rib along comes to a fence, told from the drawn line alone: 0 where it stands in it. */
function roomMm(rib: Rib, line: Line, hand: 1 | -1): number {
  const [from, to] = boardOf(rib);
  const gaps = line.map(([, y]) => {
    const middle = hand * y;
    return Math.max(from - (middle + HALF_MM), middle - HALF_MM - to, 0);
  });
  return Math.min(...gaps);
}

const along = ({ jig }: Design) => jig.ribs.filter(({ runs }) => runs === "along");
const placesOf = (design: Design) => along(design).map(({ atMm }) => atMm);
const free = trayWith([]);
/** A place on the right half where a rib stands that no end asks for. */
const inner = placesOf(free).filter((mm) => mm > 60 && mm < 340);

describe("ribs along, placed automatically", () => {
  it("stand between the ends too, where there is no fence", () => {
    expect(inner.length).toBeGreaterThan(0);
  });

  it.each([-12, -6, 0, 5, 11])(
    "keep their whole board clear of a fence %d mm beside their place",
    (asideMm) => {
      for (const place of inner) {
        const line: Line = [
          [100, place + asideMm],
          [1100, place + asideMm],
        ];
        const design = trayWith([line]);
        for (const rib of along(design))
          for (const hand of [1, -1] as const) expect(roomMm(rib, line, hand)).toBeGreaterThan(0);
        expect(placesOf(design).length).toBeLessThanOrEqual(placesOf(free).length);
        expect(design.lie.limits.every(({ share }) => share <= 1 + 1e-9)).toBe(true);
      }
    },
  );

  it("are left out in a fence that stands where one has to, and it is told", () => {
    const last = Math.max(...placesOf(free));
    const line: Line = [
      [20, last + 4],
      [1180, last + 4],
    ];
    const design = trayWith([line]);
    for (const rib of along(design))
      for (const hand of [1, -1] as const) expect(roomMm(rib, line, hand)).toBeGreaterThan(0);
    const told = design.jig.fenceStands.filter(({ inPlaceOf }) => inPlaceOf.length > 0);
    expect(told.map(({ partId }) => partId)).toEqual(["F1R", "F1L"]);
    expect(wordInPlace(design.jig.fenceStands)[0]).toMatch(
      /^F1R stands where rib L\d+R would, and carries the sheet there/,
    );
  });

  it("are notched for a fence that wanders over their places, and every other place is kept", () => {
    const line: Line = [
      [100, 60],
      [1100, 340],
    ];
    const design = trayWith([line]);
    const crossed = along(design).filter(({ atMm }) => atMm > 70 && atMm < 330);
    expect(crossed.length).toBeGreaterThan(0);
    for (const { notches } of crossed) expect(notches.map(({ fencePartId }) => fencePartId)).toEqual(["F1R"]);
    expect(placesOf(design)).toEqual(placesOf(free));
  });
});
