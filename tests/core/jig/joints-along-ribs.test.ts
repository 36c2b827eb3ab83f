import { describe, expect, it } from "vitest";
import { drawBook } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import { assert, at } from "../../../core/foundation/index.ts";
import { readFonts } from "../../read-fonts.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { box, boxBeside, section, straightProfile } from "./jig-trays.ts";
import { woodAt } from "./wood.ts";

/** Two level floors that are joined along x 500, on ribs across. */
function floors(ribsMm: readonly number[]) {
  const plain = plainProject();
  return designTray(
    plainProject({
      symmetry: "none",
      profiles: [
        straightProfile("p", [
          [0, 100],
          [1000, 100],
        ]),
      ],
      items: [
        section("s1", 1, box(0, 500, 0, 400), "p"),
        section("s2", 2, boxBeside({ itemId: "s1", edge: ["n2", "n3"] }, "x", [500, 1000, 0, 400]), "p"),
      ],
      jig: { ...plain.jig, across: { kind: "typed", atMm: ribsMm }, lie: { pushN: 0 } },
    }),
  );
}

describe("a rib in whose board a joint runs along", () => {
  const design = floors([100, 494, 900]);
  const [, rib, plainRib] = design.jig.ribs;
  assert(rib !== undefined && plainRib !== undefined, "three ribs stand");

  it("has hollows under the joint, with land between them for the foam to stand on", () => {
    expect(design.joints.length).toBeGreaterThan(0);
    const [height] = rib.heights;
    const topMm = height?.stationFaceMm ?? 0;
    const ys = Array.from({ length: 380 }, (_, i) => 10 + i);
    const depths = ys.map((y) => topMm - at(at(woodAt(rib, y), -1), 1));
    expect(Math.max(...depths)).toBeCloseTo(6, 1);
    // Three quarters of it at least is out of reach of the glue, and no span between lands is longer than 100 mm.
    const hollow = depths.filter((mm) => mm > 0.1).length / ys.length;
    expect(hollow).toBeGreaterThan(0.7);
    const lands = ys.filter((_, i) => at(depths, i) < 0.01);
    expect(lands.length).toBeGreaterThan(30);
    const reaches = lands.slice(1).map((y, i) => y - at(lands, i));
    expect(Math.max(...reaches)).toBeLessThanOrEqual(102);
    expect(rib.reliefs.map(({ runs }) => runs)).toContain("along");
  });

  it("leaves ribs beside the joint whole", () => {
    expect(plainRib.reliefs).toEqual([]);
  });

  it("says on its page that the whole top is taped there", () => {
    const words = drawBook(design, readFonts())
      .pages.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : [])))
      .join(" ");
    expect(words).toContain("A joint runs along in this rib");
    expect(words).toContain("tape the whole top there");
  });
});
