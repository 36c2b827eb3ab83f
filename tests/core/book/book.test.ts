import { describe, expect, it } from "vitest";
import { type DrawingPage, drawBook, type Mark, readLettering } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import { formatMm } from "../../../core/foundation/index.ts";
import { faceTable, hasBevels, shownFace } from "../../../core/marking/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";
import { practiceDesign } from "./practice-design.ts";

const fonts = readFonts();
const lettering = readLettering(fonts);
const demo = designTray(readExample("hill-climb-floor"));
const books = [
  ["the practice piece", practiceDesign()],
  ["the demo tray", demo],
] as const;

/** A border that a printer may not reach, mm. */
const EDGE_MM = 4;
/** Letters are measured without the space around them. */
const TOUCH_MM = 0.2;

type TextMark = Extract<Mark, { kind: "text" }>;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** The box of a text: from its base line to the top of its capitals. */
function textBox(mark: TextMark): Box {
  const width = lettering.widthMm(mark.text, mark.face, mark.heightMm);
  const start = mark.anchor === "start" ? 0 : mark.anchor === "middle" ? -width / 2 : -width;
  const corners = [
    [start, 0],
    [start + width, 0],
    [start, mark.heightMm],
    [start + width, mark.heightMm],
  ].map(([along = 0, up = 0]) => ({
    x: mark.at.x + along * Math.cos(mark.turnRad) - up * Math.sin(mark.turnRad),
    y: mark.at.y + along * Math.sin(mark.turnRad) + up * Math.cos(mark.turnRad),
  }));
  const [xs, ys] = [corners.map((p) => p.x), corners.map((p) => p.y)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

function pointsOf(mark: Mark): readonly { readonly x: number; readonly y: number }[] {
  switch (mark.kind) {
    case "line":
      return mark.points;
    case "circle":
      return [mark.centre];
    case "text": {
      const { left, right, bottom, top } = textBox(mark);
      return [
        { x: left, y: bottom },
        { x: right, y: top },
      ];
    }
  }
}

const textsOf = (page: DrawingPage): readonly TextMark[] =>
  page.marks.filter((mark): mark is TextMark => mark.kind === "text" && mark.text !== "");

const wordsOf = (page: DrawingPage): string =>
  textsOf(page)
    .map((mark) => mark.text)
    .join(" ");

describe.each(books)("build book of %s", (_, design) => {
  const { pages } = drawBook(design, fonts);

  it("comes on A4 or A3 pages, with nothing outside the printable paper", () => {
    const outside: string[] = [];
    for (const page of pages) {
      expect([
        [210, 297],
        [420, 297],
      ]).toContainEqual([page.widthMm, page.heightMm]);
      for (const mark of page.marks) {
        const isOut = pointsOf(mark).some(
          (p) =>
            p.x < EDGE_MM || p.x > page.widthMm - EDGE_MM || p.y < EDGE_MM || p.y > page.heightMm - EDGE_MM,
        );
        if (isOut) outside.push(`${page.name}: ${JSON.stringify(mark).slice(0, 120)}`);
      }
    }
    expect(outside).toEqual([]);
  });

  it("never prints one text over another", () => {
    const collisions: string[] = [];
    for (const page of pages) {
      const boxed = textsOf(page).map((mark) => ({ mark, box: textBox(mark) }));
      boxed.forEach(({ mark, box }, i) => {
        for (const other of boxed.slice(i + 1)) {
          const isOver =
            box.left < other.box.right - TOUCH_MM &&
            other.box.left < box.right - TOUCH_MM &&
            box.bottom < other.box.top - TOUCH_MM &&
            other.box.bottom < box.top - TOUCH_MM;
          if (isOver) collisions.push(`${page.name}: "${mark.text}" over "${other.mark.text}"`);
        }
      });
    }
    expect(collisions).toEqual([]);
  });

  it("uses letter heights of the standard and no smaller than 2.5 mm", () => {
    const heights = new Set(pages.flatMap((page) => textsOf(page).map((mark) => mark.heightMm)));
    for (const height of heights) expect([2.5, 3.5, 5, 7, 10]).toContain(height);
  });

  it("carries owner, number, date, sheet, title, creator, approver and document type on every sheet", () => {
    pages.forEach((page, i) => {
      const words = wordsOf(page);
      for (const label of [
        "Owner",
        "Identification number",
        "Title",
        "Created by",
        "Approved by",
        "Document type",
      ])
        expect(words).toContain(label);
      expect(words).toContain(design.project.titleBlock.issuedOn);
      expect(words).toContain(`${i + 1} / ${pages.length}`);
    });
  });

  it("lists its sheets on the cover under their true numbers", () => {
    const cover = pages
      .filter(({ name }) => name === "Cover and contents")
      .map(wordsOf)
      .join(" ");
    for (const strip of design.strips) {
      const number = pages.findIndex((page) => page.name === `Strip ${strip.id}`) + 1;
      expect(number).toBeGreaterThan(0);
      expect(cover).toContain(`${number} Strip ${strip.id} strip`);
    }
  });

  it("has a sheet for each strip that says face, hand, edges, lengths and marks", () => {
    for (const strip of design.strips) {
      const words = pages
        .filter((page) => page.name === `Strip ${strip.id}`)
        .map(wordsOf)
        .join(" ");
      const part = design.parts.find((one) => one.id === strip.partId);
      expect(words.toLowerCase()).toContain(`${part?.faceShown} toward you`);
      if (part?.hand === "left") expect(words).toContain("mirror image of the right one");
      for (const edge of strip.edges) expect(words).toContain(edge.flatLengthMm.toFixed(1));
      const table = design.marking.find((one) => one.stripId === strip.id);
      if (table === undefined || part === undefined) throw new Error(`no table of ${strip.id}`);
      // What a builder marks lies on the face shown.
      const face = hasBevels(strip)
        ? faceTable(table, shownFace(strip, part.thicknessMm, design.project), design.project)
        : table;
      for (const row of face.rows) {
        for (const figure of [row.alongMm, ...row.offsetsMm]) expect(words).toContain(formatMm(figure));
      }
      expect(words).toContain("Knife: cut away from yourself");
    }
  });

  it("lists every rib with its place, and its heights where the top is shaped", () => {
    const words = pages
      .filter((page) => page.name === "Jig" || page.name === "Rib heights")
      .map(wordsOf)
      .join(" ");
    for (const rib of design.jig.ribs) {
      expect(words).toContain(rib.id);
      if (rib.straightTop || rib.sameAs !== rib.id) continue;
      for (const height of rib.heights) expect(words).toContain(height.stationFaceMm.toFixed(1));
    }
  });
});

describe("the blanks of the book", () => {
  it("have a row for the test print, the kerf, a coupon, and every rib of jig and cradle once", () => {
    const { pages } = drawBook(demo, fonts);
    const texts = pages.filter(({ name }) => name === "What was measured").flatMap(textsOf);
    const words = texts.map(({ text }) => text);
    for (const reading of ["bar across the page", "kerf, mean of five cuts", "coupon: dry mass, cured mass"])
      expect(words).toContain(reading);
    const ribs = [...demo.jig.ribs, ...(demo.jig.cradle?.ribs ?? [])].map(({ id }) => id).sort();
    expect(
      texts
        .filter(({ face }) => face === "mono")
        .map(({ text }) => text)
        .filter((text) => ribs.includes(text))
        .sort(),
    ).toEqual(ribs);
  });
});

describe("build book", () => {
  it("prints the open problems in words on its cover", () => {
    const design = practiceDesign();
    const { pages } = drawBook(
      {
        ...design,
        problems: [{ kind: "no-stock-for-part", place: { partId: "S1R" }, name: "S1R", thicknessMm: 12 }],
      },
      fonts,
    );
    expect(pages.map(wordsOf).join(" ")).toContain("no stock sheet has that thickness and foam");
  });

  it.each([
    [
      "knife",
      0,
      "waste",
      "Knife:",
      "Foam: knife, no kerf; the line to cut by is the finished line: cut to the centre of the line; no trim.",
    ],
    [
      "saw",
      3,
      "part",
      "Saw:",
      "Foam: saw, kerf 3.0 mm; the line to cut by lies 3.0 mm outside the finished line: the blade takes the part side of the line; 5.0 mm of trim outside free edges.",
    ],
    [
      "saw",
      3,
      "waste",
      "Saw:",
      "Foam: saw, kerf 3.0 mm; the line to cut by is the finished line: the blade takes the waste side of the line;",
    ],
    [
      "hot-wire",
      1,
      "middle",
      "Hot wire:",
      "Foam: hot wire, kerf 1.0 mm; the line to cut by lies 0.5 mm outside the finished line: the middle of the blade runs on the line;",
    ],
  ] as const)(
    "says what a %s with a kerf of %d mm takes (%s), and what to mind",
    (tool, kerfMm, bladeSide, care, line) => {
      const { project, ...rest } = practiceDesign();
      const cutting = { ...project.cutting, tool, kerfMm, bladeSide, trimMm: tool === "knife" ? 0 : 5 };
      const { pages } = drawBook({ ...rest, project: { ...project, cutting } }, fonts);
      for (const name of ["Strip S1R", "Parts and joints"]) {
        const words = pages
          .filter((page) => page.name === name)
          .map(wordsOf)
          .join(" ");
        expect(words).toContain(line);
        expect(words).toContain(care);
        if (tool !== "knife") expect(words).not.toContain("Knife:");
      }
    },
  );

  it("takes an empty tray", () => {
    const { pages } = drawBook(
      { ...practiceDesign(), parts: [], strips: [], marking: [], glueUp: [], jig: { ...demo.jig, ribs: [] } },
      fonts,
    );
    expect(pages.length).toBeGreaterThan(0);
  });

  it("warns of isocyanates on the sheet where PU glue is used, and defers to the data sheet", () => {
    const words = drawBook(practiceDesign(), fonts)
      .pages.filter((page) => page.name === "Glue-up")
      .map(wordsOf)
      .join(" ");
    expect(words).toContain("isocyanates");
    expect(words).toContain("data sheet");
  });
});
