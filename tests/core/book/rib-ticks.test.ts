import { describe, expect, it } from "vitest";
import { ribTicks } from "../../../core/book/rib-ticks.ts";
import { stripLoops } from "../../../core/book/strip-piece.ts";
import { designTray } from "../../../core/design.ts";
import { at } from "../../../core/foundation/index.ts";
import { partPlaces } from "../../../core/patterns/index.ts";
import { readExample } from "../../read-example.ts";

const design = designTray(readExample("hill-climb-floor"));

/** A tick drawn this near to its station is on it. */
const ON_STATION_MM = 0.05;

describe("station marks on the rib lines of a flat pattern", () => {
  it("lie in space where a rib of the jig has a station, on the face that rests on it", () => {
    let count = 0;
    for (const strip of design.strips) {
      const part = design.parts.find(({ id }) => id === strip.partId);
      const sheet = design.sheets.find(({ id }) => id === part?.sheetId);
      if (part === undefined || sheet === undefined || part.kind === "fence") continue;
      const place = partPlaces(design.sheets, part);
      for (const { points } of ribTicks(design, part, stripLoops(strip))) {
        const [a, b] = [at(points, 0), at(points, 1)];
        const p = place?.({ u: (a.x + b.x) / 2, v: (a.y + b.y) / 2 }, sheet.depths.coreUpperMm);
        expect(p).toBeDefined();
        if (p === undefined) continue;
        expect(Math.abs(p.y - 100 * Math.round(p.y / 100))).toBeLessThan(ON_STATION_MM);
        const nearestMm = Math.min(...design.jig.ribs.map(({ atMm }) => Math.abs(atMm - p.x)));
        expect(nearestMm).toBeLessThan(ON_STATION_MM);
        count += 1;
      }
    }
    expect(count).toBeGreaterThan(40);
  });
});
