import { expect, it } from "vitest";
import { actions } from "../../../web/app/actions.ts";
import { nameOfKey } from "../../../web/app/keys.ts";

const press = (
  key: string,
  held: Partial<Record<"ctrlKey" | "metaKey" | "shiftKey" | "altKey", boolean>> = {},
) => nameOfKey({ key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...held });

it("names keys as the lists write them, with Cmd as Ctrl", () => {
  expect(press("z", { ctrlKey: true })).toBe("Ctrl+Z");
  expect(press("z", { metaKey: true })).toBe("Ctrl+Z");
  expect(press("Z", { ctrlKey: true, shiftKey: true })).toBe("Ctrl+Shift+Z");
  expect(press("?", { shiftKey: true })).toBe("?");
});

it("gives each key to one action only", () => {
  const keys = Object.values(actions).flatMap((action): readonly string[] => action.keys);
  expect(new Set(keys).size).toBe(keys.length);
});
