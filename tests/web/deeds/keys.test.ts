import { expect, it } from "vitest";
import { allDeeds } from "../../../web/deeds/index.ts";
import { nameOfKey } from "../../../web/deeds/name-of-key.ts";

const press = (
  key: string,
  held: Partial<Record<"ctrlKey" | "metaKey" | "shiftKey" | "altKey", boolean>> = {},
) => nameOfKey({ key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...held });

it("names keys as the lists write them, with Cmd as Ctrl", () => {
  expect(press("z", { ctrlKey: true })).toBe("Ctrl+Z");
  expect(press("z", { metaKey: true })).toBe("Ctrl+Z");
  expect(press("Z", { ctrlKey: true, shiftKey: true })).toBe("Ctrl+Shift+Z");
  expect(press("?", { shiftKey: true })).toBe("?");
  expect(press("ArrowLeft", { shiftKey: true })).toBe("Shift+ArrowLeft");
});

it("reads a sign that a keyboard makes with its third level as that sign", () => {
  const held = { ctrlKey: true, metaKey: false, shiftKey: false, altKey: true };
  expect(nameOfKey({ key: "[", ...held, getModifierState: (key) => key === "AltGraph" })).toBe("[");
});

it("gives each key to one deed only, but for Enter, which finishes a line or goes to the numbers", () => {
  const keys = allDeeds.flatMap((deed) => deed.keys).filter((key) => key !== "Enter");
  expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
  expect(allDeeds.filter((deed) => deed.keys.includes("Enter")).map((deed) => deed.name)).toEqual([
    "numbers",
    "finish",
  ]);
});

it("leaves the digits, the decimal signs and Tab to what is typed", () => {
  const keys = allDeeds.flatMap((deed) => deed.keys);
  expect(keys.filter((key) => /^[0-9.,]$|^Tab$|^Space$/.test(key))).toEqual([]);
});

it("has a name of its own, a word and an explanation for every deed", () => {
  const names = allDeeds.map((deed) => deed.name);
  expect(new Set(names).size).toBe(names.length);
  for (const { name, word, explains } of allDeeds) {
    expect(word.trim(), name).not.toBe("");
    expect(explains.length, name).toBeGreaterThan(8);
    expect(explains, name).not.toMatch(/[.!]$/);
  }
});
