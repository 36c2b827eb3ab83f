import { describe, expect, it } from "vitest";
import {
  closeGesture,
  emptyProject,
  historyOf,
  type Project,
  pushHistory,
  redoHistory,
  undoHistory,
} from "../../../core/project/index.ts";

const named = (title: string): Project => emptyProject({ id: "p", title, issuedOn: "2026-01-01" });
const [a, b, c, d] = [named("a"), named("b"), named("c"), named("d")];

describe("a history", () => {
  it("goes back and forth over single steps", () => {
    const history = pushHistory(pushHistory(historyOf(a), b, "single"), c, "single");
    const back = undoHistory(undoHistory(history));
    expect(back.now).toBe(a);
    expect(redoHistory(redoHistory(back)).now).toBe(c);
  });

  it("takes a whole gesture back in one step", () => {
    const dragged = [b, c, d].reduce((kept, now) => pushHistory(kept, now, "open"), historyOf(a));
    expect(dragged.past).toEqual([a]);
    expect(undoHistory(closeGesture(dragged)).now).toBe(a);
    expect(undoHistory(dragged).now).toBe(a);
  });

  it("keeps two gestures apart once the first is closed", () => {
    const first = closeGesture(pushHistory(historyOf(a), b, "open"));
    expect(pushHistory(first, c, "open").past).toEqual([a, b]);
  });

  it("enters a single step behind a gesture that is still open", () => {
    const history = pushHistory(pushHistory(historyOf(a), b, "open"), c, "single");
    expect(history.past).toEqual([a, b]);
    expect(history.open).toBe(false);
  });

  it("forgets what was undone when something new is done", () => {
    const history = pushHistory(undoHistory(pushHistory(historyOf(a), b, "single")), c, "single");
    expect(history.future).toEqual([]);
    expect(redoHistory(history)).toBe(history);
  });

  it("does not count a change that changes nothing", () => {
    const history = pushHistory(historyOf(a), b, "single");
    expect(pushHistory(history, b, "single")).toBe(history);
    expect(pushHistory(history, b, "open")).toBe(history);
  });

  it("stays where it is at either end", () => {
    const history = historyOf(a);
    expect(undoHistory(history)).toBe(history);
    expect(redoHistory(history)).toBe(history);
  });

  it("remembers thousands of steps", () => {
    const steps = Array.from({ length: 3000 }, (_, i) => named(`step ${i}`));
    let history = steps.reduce((kept, now) => pushHistory(kept, now, "single"), historyOf(a));
    for (let i = 0; i < 3000; i++) history = undoHistory(history);
    expect(history.now).toBe(a);
    expect(history.future).toHaveLength(3000);
  });
});
