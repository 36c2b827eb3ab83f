import { describe, expect, it } from "vitest";
import {
  type CommandWords,
  cancelGesture,
  closeGesture,
  emptyProject,
  type History,
  historyOf,
  jumpHistory,
  nameOfRedo,
  nameOfUndo,
  type Project,
  pushHistory,
  pushInGesture,
  redoHistory,
  undoHistory,
} from "../../../core/project/index.ts";

const named = (title: string): Project => emptyProject({ id: "p", title, issuedOn: "2026-01-01" });
const [a, b, c, d] = [named("a"), named("b"), named("c"), named("d")];
const move = (node: number): CommandWords => ({
  name: `Move node ${node} of One`,
  onLine: "Move One",
  onThing: "Move One",
  weight: "shapes",
});

const push = (history: History, project: Project): History =>
  pushHistory(history, project, `Make ${project.title}`);
const namesOf = ({ steps }: History) => steps.map(({ name }) => name);
const projectsOf = ({ steps }: History) => steps.map(({ project }) => project);

describe("a history", () => {
  it("goes back and forth over single steps", () => {
    const history = push(push(historyOf(a), b), c);
    const back = undoHistory(undoHistory(history));
    expect(back.now).toBe(a);
    expect(redoHistory(redoHistory(back)).now).toBe(c);
  });

  it("names every step, and what would be taken back or made again", () => {
    const history = push(push(historyOf(a), b), c);
    expect(namesOf(history)).toEqual(["As opened", "Make b", "Make c"]);
    const back = undoHistory(history);
    expect([nameOfUndo(back), nameOfRedo(back)]).toEqual(["Make b", "Make c"]);
    expect([nameOfUndo(undoHistory(back)), nameOfRedo(history)]).toEqual([undefined, undefined]);
  });

  it("jumps to any step, keeps those behind it, and stays within its ends", () => {
    const history = push(push(push(historyOf(a), b), c), d);
    expect([0, 2, 1, 3, 99, -1].map((index) => jumpHistory(history, index).now)).toEqual([a, c, b, d, d, a]);
    expect(namesOf(jumpHistory(history, 0))).toEqual(namesOf(history));
    expect(jumpHistory(history, 3)).toBe(history);
  });

  it("takes a whole gesture back in one step", () => {
    const dragged = [b, c, d].reduce((kept, now) => pushInGesture(kept, now, move(1)), historyOf(a));
    expect(projectsOf(dragged)).toEqual([a, d]);
    expect(undoHistory(closeGesture(dragged)).now).toBe(a);
    expect(undoHistory(dragged).now).toBe(a);
  });

  it("names a gesture after all that is done in it, or as it is told at the end", () => {
    const one = pushInGesture(historyOf(a), b, move(1));
    const both = pushInGesture(pushInGesture(one, c, move(2)), d, move(1));
    expect(namesOf(one)).toEqual(["As opened", "Move node 1 of One"]);
    expect(namesOf(closeGesture(both))).toEqual(["As opened", "Move One"]);
    expect(namesOf(closeGesture(both, "Turn One"))).toEqual(["As opened", "Turn One"]);
    expect(closeGesture(both, "Turn One").now).toBe(d);
  });

  it("keeps two gestures apart once the first is closed", () => {
    const first = closeGesture(pushInGesture(historyOf(a), b, move(1)));
    expect(projectsOf(pushInGesture(first, c, move(2)))).toEqual([a, b, c]);
  });

  it("enters a single step behind a gesture that is still open", () => {
    const history = push(pushInGesture(historyOf(a), b, move(1)), c);
    expect(projectsOf(history)).toEqual([a, b, c]);
    expect(history.gesture).toBeUndefined();
  });

  it("forgets a gesture that was left off, with the later steps that it took the place of", () => {
    const before = undoHistory(push(push(historyOf(a), b), c));
    const left = cancelGesture(pushInGesture(before, d, move(1)));
    expect([left.now, projectsOf(left)]).toEqual([b, [a, b]]);
    expect(cancelGesture(before)).toBe(before);
  });

  it("forgets what was undone when something new is done", () => {
    const history = push(undoHistory(push(historyOf(a), b)), c);
    expect(projectsOf(history)).toEqual([a, c]);
    expect(redoHistory(history)).toBe(history);
  });

  it("does not count a change that changes nothing", () => {
    const history = push(historyOf(a), b);
    expect(push(history, b)).toBe(history);
    expect(pushInGesture(history, b, move(1))).toBe(history);
  });

  it("stays where it is at either end", () => {
    const history = historyOf(a);
    expect(undoHistory(history)).toBe(history);
    expect(redoHistory(history)).toBe(history);
  });

  it("remembers thousands of steps", () => {
    const steps = Array.from({ length: 3000 }, (_, i) => named(`step ${i}`));
    let history = steps.reduce(push, historyOf(a));
    for (let i = 0; i < 3000; i++) history = undoHistory(history);
    expect(history.now).toBe(a);
    expect(history.steps).toHaveLength(3001);
  });
});
