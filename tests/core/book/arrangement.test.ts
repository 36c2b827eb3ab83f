import { describe, expect, it } from "vitest";
import { cutSolid } from "../../../core/book/cut-solid.ts";
import { type Eye, seeFrom } from "../../../core/book/eye.ts";
import { type SeenBody, visibleLines } from "../../../core/book/hidden-lines.ts";
import {
  type Design,
  type DrawingPage,
  drawBook,
  type Mark,
  readLettering,
} from "../../../core/book/index.ts";
import { sectionStations } from "../../../core/book/section-stations.ts";
import { designTray } from "../../../core/design.ts";
import { traySolids } from "../../../core/solids/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";

const fonts = readFonts();
const lettering = readLettering(fonts);

/**
 * Two triangles for each face of a box, counter-clockwise from outside, and its twelve edges; the face toward y drawn in by
 * `taperMm` on all sides.
 */
function boxBody(from: readonly number[], to: readonly number[], taperMm = 0) {
  const positions = new Float32Array(24);
  for (let i = 0; i < 8; i++) {
    const drawnIn = (i & 2) === 0 ? 0 : taperMm;
    [i & 1, i & 2, i & 4].forEach((bit, axis) => {
      const place = (bit === 0 ? from[axis] : to[axis]) ?? 0;
      positions[3 * i + axis] = axis === 1 ? place : place + (bit === 0 ? drawnIn : -drawnIn);
    });
  }
  const quads = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  const triangles = new Uint32Array(quads.flatMap(([a = 0, b = 0, c = 0, d = 0]) => [a, b, c, a, c, d]));
  const outline = [0, 1, 2, 3, 4, 5, 6, 7, 0, 2, 1, 3, 4, 6, 5, 7, 0, 4, 1, 5, 2, 6, 3, 7];
  return { positions, triangles, outline };
}

function seen(body: ReturnType<typeof boxBody>, eye: Eye): SeenBody {
  const see = seeFrom(eye);
  const spots = Array.from({ length: 8 }, (_, i) => {
    const [x = 0, y = 0, z = 0] = body.positions.subarray(3 * i, 3 * i + 3);
    return see({ x, y, z });
  });
  return { ...body, spots };
}

const totalLength = (lines: ReturnType<typeof visibleLines>): number =>
  lines.reduce(
    (sum, line) =>
      sum +
      line
        .slice(1)
        .reduce((part, p, i) => part + Math.hypot(p.x - (line[i]?.x ?? 0), p.y - (line[i]?.y ?? 0)), 0),
    0,
  );

/** At a corner a hidden edge that begins there is seen for less than what counts as touching. */
const NEAR_CORNERS_MM = 3;

describe("a picture in line", () => {
  const eye = { towardFrontRad: Math.PI / 4, upRad: Math.atan(1 / Math.SQRT2) };

  it("shows nine of a cube's twelve edges, each as long as the isometric view makes it", () => {
    // ISO 5456-3: in the isometric projection every edge of a cube is shortened by the same factor, √(2/3).
    const lines = visibleLines([seen(boxBody([0, 0, 0], [100, 100, 100]), eye)], 1);
    expect(totalLength(lines)).toBeCloseTo(9 * 100 * Math.sqrt(2 / 3), 0);
  });

  it("leaves out what lies behind a nearer body, and shows it where that ends", () => {
    const level: Eye = { towardFrontRad: 0, upRad: 0 };
    // Seen from the left-hand side: a plate of 200 by 100 behind a narrower one of 100 by 300.
    const far = boxBody([0, 100, 0], [200, 110, 100], 3);
    const near = boxBody([50, 0, -100], [150, 10, 200], 3);
    const both = visibleLines([seen(far, level), seen(near, level)], 0.5);
    const alone = visibleLines([seen(near, level)], 0.5);
    const nearMm = 2 * (100 + 300);
    expect(Math.abs(totalLength(alone) - nearMm)).toBeLessThan(NEAR_CORNERS_MM);
    // Of the farther one two upright edges, and 100 of 200 mm of its upper and its lower edge.
    expect(Math.abs(totalLength(both) - nearMm - 2 * 100 - 2 * 100)).toBeLessThan(NEAR_CORNERS_MM);
  });
});

describe("a section across the car", () => {
  it("cuts a box in its rectangle", () => {
    const loops = cutSolid(boxBody([0, -50, 20], [100, 70, 30]), 33);
    expect(loops).toHaveLength(1);
    const [xs, ys] = [(loops[0] ?? []).map((p) => p.x), (loops[0] ?? []).map((p) => p.y)];
    expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]).toEqual([-50, 70, 20, 30]);
    expect(cutSolid(boxBody([0, 0, 0], [1, 1, 1]), 2)).toEqual([]);
  });

  it("is taken where other parts are cut each time, at most five, lettered from the front", () => {
    const design = designTray(readExample("hill-climb-floor"));
    const solids = traySolids(design);
    const stations = sectionStations(solids);
    expect(stations.map(({ letter }) => letter)).toEqual(["A", "B", "C", "D", "E"].slice(0, stations.length));
    expect(stations.length).toBeGreaterThan(3);
    const cut = stations.map(({ xMm }) =>
      solids.flatMap((solid) => (cutSolid(solid, xMm).length > 0 ? [solid.id] : [])).join(" "),
    );
    expect(new Set(cut).size).toBe(stations.length);
  });
});

const textsOf = (page: DrawingPage) =>
  page.marks.filter((mark): mark is Extract<Mark, { kind: "text" }> => mark.kind === "text");

const demo = designTray(readExample("hill-climb-floor"));
const books: readonly (readonly [string, Design])[] = [
  ["the practice piece", designTray(readExample("practice-piece"))],
  ["the demo tray", demo],
];

describe.each(books)("general arrangement of %s", (_, design) => {
  const { pages } = drawBook(design, fonts);
  const of = (name: string) => pages.filter((page) => page.name === name);

  it("gives every section as wide as the drawn sheets are there", () => {
    const stations = sectionStations(traySolids(design));
    const texts = of("Cross-sections").flatMap(textsOf);
    const widths = texts.filter(({ layer, text }) => layer === "dimensions" && /^\d/.test(text));
    expect(widths).toHaveLength(stations.length);
    stations.forEach(({ xMm, letter }, i) => {
      expect(texts.some(({ text }) => text.startsWith(`${letter}–${letter}`))).toBe(true);
      // On the drawn outlines, which the flat patterns and the solids come from in two other ways.
      const ys = design.sheets.flatMap((sheet) => {
        if (sheet.kind === "fence") return [];
        const own = sheet.planLoops.flatMap((loop) =>
          loop.flatMap((b, k) => {
            const a = loop[(k + loop.length - 1) % loop.length] ?? b;
            return a.x < xMm === b.x < xMm ? [] : [a.y + ((b.y - a.y) * (xMm - a.x)) / (b.x - a.x)];
          }),
        );
        const hasImage = design.parts.some((part) => part.sheetId === sheet.id && part.hand === "left");
        return hasImage ? own.flatMap((y) => [y, -y]) : own;
      });
      // Edges leave the drawn line by their bevels at most.
      expect(Math.abs(Number(widths[i]?.text) - (Math.max(...ys) - Math.min(...ys)))).toBeLessThan(8);
    });
  });

  it("names every part once in a balloon and once in the list", () => {
    const texts = of("Parts and their codes").flatMap(textsOf);
    const balloons = texts.filter(({ layer }) => layer === "balloons").map(({ text }) => text);
    const codes = [
      ...design.parts.map(({ id }) => id),
      ...design.plates.flatMap(({ parts }) => parts.map(({ id }) => id)),
    ].sort();
    expect([...balloons].sort()).toEqual(codes);
    const listed = texts.filter(({ layer, face }) => layer === undefined && face === "mono");
    for (const code of codes) expect(listed.map(({ text }) => text)).toContain(code);
  });

  it("has no two leaders of balloons that cross", () => {
    const leaders = of("Parts and their codes").flatMap((page) =>
      page.marks.flatMap((mark) =>
        mark.kind === "line" && mark.layer === "balloons" && !mark.closed ? [mark.points] : [],
      ),
    );
    expect(leaders.length).toBeGreaterThan(0);
    leaders.forEach(([a, b], i) => {
      for (const [c, d] of leaders.slice(i + 1)) {
        if (!a || !b || !c || !d) continue;
        const side = (p: typeof a, q: typeof a, r: typeof a) =>
          Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
        expect(side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0).toBe(false);
      }
    });
  });

  it.each(["General arrangement", "Cross-sections", "Parts and their codes"])(
    "sets no word of %s across a line",
    (name) => {
      const crossed = of(name).flatMap((page) => {
        const lines = page.marks.filter((mark) => mark.kind === "line" && mark.fill === undefined);
        return textsOf(page).flatMap((mark) => {
          const hit = lines.find((line) => line.kind === "line" && isAcross(mark, line.points, line.closed));
          return hit === undefined ? [] : [`${mark.text} by ${JSON.stringify(hit).slice(0, 90)}`];
        });
      });
      expect(crossed).toEqual([]);
    },
  );
});

/** Whether a line passes through the letters of a level or an upright text. */
function isAcross(
  mark: Extract<Mark, { kind: "text" }>,
  points: readonly { readonly x: number; readonly y: number }[],
  closed: boolean,
): boolean {
  const width = lettering.widthMm(mark.text, mark.face, mark.heightMm);
  const start = mark.anchor === "start" ? 0 : mark.anchor === "middle" ? -width / 2 : -width;
  const all = closed ? [...points, points[0] ?? { x: 0, y: 0 }] : points;
  // In the frame of the text: its letters stand between 0 and its height.
  const [c, s] = [Math.cos(mark.turnRad), Math.sin(mark.turnRad)];
  const local = all.map((p) => ({
    x: (p.x - mark.at.x) * c + (p.y - mark.at.y) * s - start,
    y: -(p.x - mark.at.x) * s + (p.y - mark.at.y) * c,
  }));
  const inner = { left: 0.1, right: width - 0.1, bottom: 0.1, top: mark.heightMm - 0.1 };
  return local.slice(1).some((b, i) => {
    const a = local[i] ?? b;
    for (let k = 0; k <= 200; k++) {
      const [x, y] = [a.x + ((b.x - a.x) * k) / 200, a.y + ((b.y - a.y) * k) / 200];
      if (x > inner.left && x < inner.right && y > inner.bottom && y < inner.top) return true;
    }
    return false;
  });
}
