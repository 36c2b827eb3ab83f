import { beforeEach, describe, expect, it } from "vitest";
import { type KeptWork, useFiles } from "../../../web/files/index.ts";
import { tellNotKept } from "../../../web/files/tell-not-kept.ts";
import { listWorks } from "../../../web/files/works-list.ts";

const work = (slot: string, keptAtMs: number, more: Partial<KeptWork> = {}): KeptWork => ({
  slot,
  title: slot,
  text: "",
  keptAtMs,
  isOwn: true,
  ...more,
});

beforeEach(() => {
  useFiles.setState({
    works: [],
    unsaved: [],
    keeping: "kept",
    hasToldNotKept: false,
    notice: undefined,
  });
});

describe("the list of works", () => {
  it("has what could not be written in place of what was written before, the latest first", () => {
    const newer = work("a", 30, { title: "with the last change" });
    useFiles.setState({ unsaved: [newer] });
    listWorks([work("b", 20), work("a", 10)]);
    expect(useFiles.getState().works.map(({ title }) => title)).toEqual(["with the last change", "b"]);
  });

  it("keeps a hundred works and forgets none", () => {
    listWorks(Array.from({ length: 100 }, (_, index) => work(`w${index}`, index)));
    expect(useFiles.getState().works).toHaveLength(100);
  });
});

describe("storage that takes nothing", () => {
  it("is told in a dialog that offers the file, once until it takes something again", () => {
    tellNotKept(new DOMException("full", "QuotaExceededError"), true);
    expect(useFiles.getState().keeping).toBe("full");
    expect(useFiles.getState().notice?.offers).toBe("save as a file");
    useFiles.getState().tell(undefined);
    tellNotKept(new DOMException("full", "QuotaExceededError"), true);
    expect(useFiles.getState().notice).toBeUndefined();
  });

  it("is no reason for a dialog while an example is only looked at, and shows on the page all the same", () => {
    tellNotKept(new Error("denied"), false);
    expect(useFiles.getState().keeping).toBe("closed");
    expect(useFiles.getState().notice).toBeUndefined();
  });
});
