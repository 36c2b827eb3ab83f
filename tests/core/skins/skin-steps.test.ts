import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import type { Project } from "../../../core/project/index.ts";
import type { SkinFaceName, SkinPlan } from "../../../core/skins/index.ts";
import { readExample } from "../../read-example.ts";

const demo = readExample("hill-climb-floor");
const withLaminate = (laminate: NonNullable<Project["laminate"]>): Project => ({ ...demo, laminate });
const titlesOf = ({ faces }: SkinPlan, face: SkinFaceName, session: number): readonly string[] =>
  faces.find((one) => one.face === face)?.sessions[session]?.steps.map(({ title }) => title) ?? [];
const placeOf = (titles: readonly string[], words: string | RegExp): number =>
  titles.findIndex((title) => title.search(words) >= 0);

describe("a session read aloud", () => {
  const { skins } = designTray(demo);

  it("cuts cloth before it mixes, mixes before it wets, and cures after the tools are clean", () => {
    for (const { face, sessions } of skins.faces)
      for (const [i] of sessions.entries()) {
        const titles = titlesOf(skins, face, i);
        const places = [
          "^Make the",
          "^Cut all cloth",
          "^Weigh and mix",
          "^Wet the bare",
          "^Lay ply 1",
          "^Lay ply 2",
        ]
          .concat(["^Lay peel ply", "^Clean the tools", "^Let it cure"])
          .map((words) => placeOf(titles, new RegExp(words)));
        expect(places).not.toContain(-1);
        expect(places).toEqual([...places].sort((a, b) => a - b));
        expect(places.at(-1)).toBe(titles.length - 1);
      }
  });

  it("pulls the pins before the first cloth, and washes cured skin with water before it is abraded", () => {
    expect(titlesOf(skins, "lower face", 0)[0]).toContain("pull every pin");
    const border = titlesOf(skins, "lower face", 1)[0] ?? "";
    expect(border).toMatch(/wash with water and dry, abrade with 80 grit .*dust mask/);
  });

  it("makes the first skin ready where the second closes round the edge, and only where edges are wrapped", () => {
    expect(placeOf(titlesOf(skins, "upper face", 0), "cut the first skin flush")).toBe(1);
    expect(placeOf(titlesOf(skins, "lower face", 0), "cut the first skin flush")).toBe(-1);
    const { skins: trimmed } = designTray(withLaminate({ edgeFinish: "trimmed" }));
    expect(placeOf(titlesOf(trimmed, "upper face", 0), "cut the first skin flush")).toBe(-1);
  });

  it("draws the fillets of a glued fence under its cloth, those of a bonded one after it with strips", () => {
    const titles = titlesOf(skins, "fence sides", 0);
    const glued = placeOf(titles, /fillets along F1R, F1L/);
    const bonded = placeOf(titles, /fillets along F2R, F2L.* strip cut on the bias/);
    expect(placeOf(titles, /^Make the floor beside/)).toBeGreaterThan(0);
    expect(glued).toBeGreaterThan(placeOf(titles, /^Wet the bare/));
    expect(glued).toBeLessThan(placeOf(titles, /^Lay ply 1/));
    expect(bonded).toBeGreaterThan(placeOf(titles, /^Lay ply 2/));
    expect(bonded).toBeLessThan(placeOf(titles, /^Lay peel ply/));
  });

  it("cures longer in a cooler shop: twice as long at 10 degrees less", () => {
    const hoursAt = (shopCelsius: number) => {
      const { skins: plan } = designTray(withLaminate({ shopCelsius }));
      const last = titlesOf(plan, "lower face", 0).at(-1) ?? "";
      expect(last).toContain(`at ${shopCelsius} °C`);
      return Number(/about (\d+) h/.exec(last)?.[1]);
    };
    expect(Math.abs(hoursAt(18) - 2 * hoursAt(28))).toBeLessThanOrEqual(2);
  });
});

describe("the faces of a tray", () => {
  const facesOf = (attitude: "upright" | "inverted") =>
    designTray({ ...demo, jig: { ...demo.jig, attitude } }).skins;

  it("stand in the order in which the calendar skins them, on either jig", () => {
    for (const attitude of ["upright", "inverted"] as const) {
      const { faces, tasks } = facesOf(attitude);
      const inTasks = tasks.filter(({ kind }) => kind === "ready").map(({ id }) => id);
      expect(faces.map(({ face }) => `skin ${face} ready`)).toEqual(inTasks);
      expect(faces[0]?.face).toBe(attitude === "inverted" ? "lower face" : "upper face");
    }
  });
});
