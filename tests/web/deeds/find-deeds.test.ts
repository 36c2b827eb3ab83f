import { expect, it } from "vitest";
import { findDeeds } from "../../../web/deeds/find-deeds.ts";
import { allDeeds } from "../../../web/deeds/index.ts";

const namesFor = (typed: string) => findDeeds(allDeeds, typed).map((deed) => deed.name);

it("finds everything while nothing is typed", () => {
  expect(findDeeds(allDeeds, "  ")).toEqual(allDeeds);
});

it("finds a deed by any of its words, in any order, however they are written", () => {
  expect(namesFor("fence")).toContain("tool-fence");
  expect(namesFor("back CHANGE")).toContain("undo");
  expect(namesFor("plän")).toEqual(namesFor("plan"));
});

it("puts those first whose own word begins with what was typed", () => {
  expect(namesFor("und")[0]).toBe("undo");
  expect(namesFor("sect")[0]).toBe("tool-section");
});

it("finds nothing for a word that nothing is called", () => {
  expect(namesFor("zebra")).toEqual([]);
});
