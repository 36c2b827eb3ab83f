import { beforeEach, describe, expect, it } from "vitest";
import { writeProject } from "../../../core/project/index.ts";
import { useFiles } from "../../../web/files/index.ts";
import { openText } from "../../../web/files/open-work.ts";
import { fileNameOf } from "../../../web/files/save-file.ts";
import { useDocument } from "../../../web/stores/index.ts";
import { sampleProject } from "../sample-design.ts";

describe("opening a file", () => {
  beforeEach(() => {
    useDocument.getState().replace({ ...sampleProject, title: "In hand" });
    useFiles.getState().tell(undefined);
  });

  it("takes up what was written", () => {
    openText(writeProject(sampleProject), "sample.json");
    expect(useDocument.getState().project).toEqual(sampleProject);
    expect(useFiles.getState().notice).toBeUndefined();
  });

  it.each([
    ["a broken file", writeProject(sampleProject).slice(0, 200)],
    ["a newer file", writeProject(sampleProject).replace(/"version": \d+/, '"version": 99')],
    ["something else", '{"hello": 1}'],
  ])("says why %s is not opened and leaves the work in hand untouched", (_what, text) => {
    const before = useDocument.getState().history;
    openText(text, "wrong.json");
    expect(useDocument.getState().history).toBe(before);
    expect(useFiles.getState().notice?.title).toContain("wrong.json");
    expect(useFiles.getState().notice?.text).toMatch(/\w{3}/);
  });

  it("gives every opened file a place of its own, so that the work before stays kept", () => {
    const before = useFiles.getState().slot;
    openText(writeProject(sampleProject), "sample.json");
    expect(useFiles.getState().slot).not.toBe(before);
  });
});

it("names files after the tray, in letters and digits of any script", () => {
  expect(fileNameOf("Hill-climb car, floor tray")).toBe("hill-climb-car-floor-tray");
  expect(fileNameOf("Über / Tray 2")).toBe("über-tray-2");
  expect(fileNameOf("  ")).toBe("tray");
});
