import { beforeEach, describe, expect, it } from "vitest";
import { type Command, emptyProject } from "../../../core/project/index.ts";
import { useDocument } from "../../../web/stores/index.ts";

const rename = (title: string): Command => ({ kind: "change-settings", changes: { title } });
const title = () => useDocument.getState().project.title;

describe("the document store", () => {
  beforeEach(() => {
    useDocument.getState().setReadOnly(false);
    useDocument.getState().replace(emptyProject({ id: "t", title: "first", issuedOn: "2026-01-01" }));
  });

  it("takes one edit back at each undo, and makes it again at redo", () => {
    const { dispatch, undo, redo } = useDocument.getState();
    dispatch(rename("second"));
    dispatch(rename("third"));
    undo();
    expect(title()).toBe("second");
    undo();
    expect(title()).toBe("first");
    redo();
    redo();
    expect(title()).toBe("third");
  });

  it("takes a whole gesture back at once", () => {
    const { dispatchInGesture, endGesture, undo } = useDocument.getState();
    for (const name of ["a", "b", "c"]) dispatchInGesture(rename(name));
    endGesture();
    dispatchInGesture(rename("d"));
    endGesture();
    undo();
    expect(title()).toBe("c");
    undo();
    expect(title()).toBe("first");
  });

  it("forgets a gesture that was left off, as if it had never begun", () => {
    const { dispatch, dispatchInGesture, cancelGesture, undo, redo } = useDocument.getState();
    dispatch(rename("kept"));
    dispatchInGesture(rename("dragged"));
    cancelGesture();
    expect(title()).toBe("kept");
    redo();
    expect(title()).toBe("kept");
    undo();
    expect(title()).toBe("first");
  });

  it("cancelling between gestures changes nothing", () => {
    const { dispatch, cancelGesture } = useDocument.getState();
    dispatch(rename("kept"));
    cancelGesture();
    expect(title()).toBe("kept");
  });

  it("jumps to any step, and forward again", () => {
    const { dispatch, jump } = useDocument.getState();
    for (const name of ["second", "third", "fourth"]) dispatch(rename(name));
    jump(1);
    expect(title()).toBe("second");
    jump(3);
    expect(title()).toBe("fourth");
  });

  it("becomes another document in one step that can be taken back", () => {
    const { dispatch, become, undo } = useDocument.getState();
    const { generation } = useDocument.getState();
    dispatch(rename("second"));
    become(emptyProject({ id: "t", title: "kept", issuedOn: "2026-01-01" }), "Go back to Kept");
    expect(title()).toBe("kept");
    expect(useDocument.getState().history.steps.at(-1)?.name).toBe("Go back to Kept");
    undo();
    expect([title(), useDocument.getState().generation]).toEqual(["second", generation]);
  });

  it("edits nothing while another tab holds the work", () => {
    const { dispatch, jump, become, setReadOnly } = useDocument.getState();
    dispatch(rename("second"));
    setReadOnly(true);
    dispatch(rename("third"));
    become(emptyProject({ id: "t", title: "kept", issuedOn: "2026-01-01" }), "Go back");
    jump(0);
    expect(title()).toBe("second");
  });

  it("gives a new document a history of its own", () => {
    const { dispatch, replace, undo } = useDocument.getState();
    dispatch(rename("second"));
    replace(emptyProject({ id: "u", title: "other", issuedOn: "2026-01-01" }));
    undo();
    expect(title()).toBe("other");
  });
});
