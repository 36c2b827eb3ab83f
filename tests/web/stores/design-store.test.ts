import { expect, it } from "vitest";
import type { Design } from "../../../core/design.ts";
import type { Project } from "../../../core/project/index.ts";
import { followDocument, useDesign, useDocument } from "../../../web/stores/index.ts";
import { sampleDesign, sampleProject } from "../sample-design.ts";

it("computes the newest document after each change, and skips those between", async () => {
  const asked: string[] = [];
  const answers: (() => void)[] = [];
  const compute = (project: Project) =>
    new Promise<Design>((resolve) => {
      asked.push(project.title);
      answers.push(() => resolve({ ...sampleDesign, project }));
    });
  const answerNext = async () => {
    answers.shift()?.();
    await new Promise((resolve) => setTimeout(resolve));
  };

  useDocument.getState().replace({ ...sampleProject, title: "one" });
  const stop = followDocument(compute);
  for (const title of ["two", "three", "four"]) {
    useDocument.getState().dispatch({ kind: "change-settings", changes: { title } });
  }
  expect(useDesign.getState().isComputing).toBe(true);
  await answerNext();
  expect(useDesign.getState().design?.project.title).toBe("one");
  expect(useDesign.getState().isComputing).toBe(true);
  await answerNext();
  expect(useDesign.getState().design?.project.title).toBe("four");
  expect(useDesign.getState().isComputing).toBe(false);
  expect(asked).toEqual(["one", "four"]);
  stop();
});

it("says that a computation failed, keeps the last design, and goes on with the next change", async () => {
  let fails = true;
  useDesign.setState({ design: sampleDesign, failure: undefined });
  const stop = followDocument(async (project) => {
    if (fails) throw new Error("broken");
    return { ...sampleDesign, project };
  });
  await new Promise((resolve) => setTimeout(resolve));
  expect(useDesign.getState()).toMatchObject({ design: sampleDesign, isComputing: false });
  expect(useDesign.getState().failure).toContain("broken");
  fails = false;
  useDocument.getState().dispatch({ kind: "change-settings", changes: { title: "mended" } });
  await new Promise((resolve) => setTimeout(resolve));
  expect(useDesign.getState().failure).toBeUndefined();
  expect(useDesign.getState().design?.project.title).toBe("mended");
  stop();
});
