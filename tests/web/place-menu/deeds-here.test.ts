import { describe, expect, it } from "vitest";
import { deedsHere } from "../../../web/place-menu/deeds-here.ts";

const deed = (name: string, group: "line" | "tool" | "view" | "tray" | "stage") =>
  ({ name, group, word: name, explains: "", keys: [], heard: "board", run: () => {} }) as never;

const all = [
  deed("delete", "line"),
  deed("push-left-1", "line"),
  deed("tool-fence", "tool"),
  deed("fit", "view"),
  deed("save", "tray"),
  deed("stage-glue", "stage"),
];
const names = (isOnSomething: boolean) => deedsHere(all, isOnSomething).map(({ name }) => name);

describe("the menu of a place", () => {
  it("offers on a line what can be done with it, and not what the hand does better", () => {
    expect(names(true)).toEqual(["delete"]);
  });

  it("offers the tools and the views on bare paper", () => {
    expect(names(false)).toEqual(["tool-fence", "fit"]);
  });
});
