import { expect, it, vi } from "vitest";
import type { Shapes } from "../../../core/design.ts";
import type { PartOutline } from "../../../core/patterns/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { type DesignCore, followDocument, useDesign, useDocument } from "../../../web/stores/index.ts";
import { sampleDesign, sampleProject } from "../sample-design.ts";

/** What the later stages add: all but the shapes. */
const { project, plates, sheets, joints, jointOffers, parts, ...sampleWork } = sampleDesign;

vi.stubGlobal("requestAnimationFrame", (act: () => void) => setTimeout(act, 16));

/** A core whose outlines come at once, none unless told, and whose shapes are those of the document that came last. */
function coreThat(
  shape: (project: Project) => Promise<Shapes>,
  plan: DesignCore["plan"] = async () => sampleWork,
  outlines: (project: Project) => readonly PartOutline[] = () => [],
): DesignCore {
  let typed = sampleProject;
  return {
    outlines: async (project) => {
      typed = project;
      return outlines(project);
    },
    shape: () => shape(typed),
    plan,
  };
}

const settle = () => new Promise((resolve) => setTimeout(resolve));

it("computes the newest document after each change, and skips those between", async () => {
  const asked: string[] = [];
  const answers: (() => void)[] = [];
  const shape = (project: Project) =>
    new Promise<Shapes>((resolve) => {
      asked.push(project.title);
      answers.push(() => resolve({ ...sampleDesign, project }));
    });
  const answerNext = async () => {
    await settle();
    answers.shift()?.();
    await settle();
  };

  useDocument.getState().replace({ ...sampleProject, title: "one" });
  const stop = followDocument(coreThat(shape));
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
  const stop = followDocument(
    coreThat(async (project) => {
      if (fails) throw new Error("broken");
      return { ...sampleDesign, project };
    }),
  );
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

it("shows new shapes at once, and plans their work when the hand lets go", async () => {
  const shaped: (() => void)[] = [];
  let plans = 0;
  const shapeNext = async () => {
    await settle();
    shaped.shift()?.();
    await settle();
    return useDesign.getState().design?.project.title;
  };
  useDesign.setState({ design: sampleDesign, failure: undefined });
  const stop = followDocument(
    coreThat(
      (project) => new Promise((resolve) => shaped.push(() => resolve({ ...sampleDesign, project }))),
      async () => {
        plans += 1;
        return sampleWork;
      },
    ),
  );
  await shapeNext();
  expect(plans).toBe(1);
  const dragTo = (title: string) =>
    useDocument.getState().dispatchInGesture({ kind: "change-settings", changes: { title } });
  dragTo("dragged");
  dragTo("dragged on");
  expect(await shapeNext()).toBe("dragged");
  expect(plans).toBe(1);
  expect(useDesign.getState().isComputing).toBe(true);
  expect(await shapeNext()).toBe("dragged on");
  expect(plans).toBe(1);
  expect(useDesign.getState().isComputing).toBe(true);
  useDocument.getState().endGesture();
  await settle();
  expect(plans).toBe(2);
  expect(useDesign.getState().isComputing).toBe(false);
  stop();
});

it("shows the outlines of what is dragged ahead of its shapes, and shapes the tray when the hand rests", async () => {
  const shaped: string[] = [];
  const outlineOf = ({ title }: Project) => [{ id: title, loops: [] }];
  const shape = async (project: Project): Promise<Shapes> => {
    shaped.push(project.title);
    return { ...sampleDesign, project };
  };
  useDesign.setState({ design: sampleDesign, failure: undefined });
  const seen: string[] = [];
  const stop = followDocument(coreThat(shape, undefined, outlineOf));
  await settle();
  const stopWatching = useDesign.subscribe(({ outlinesAhead }) => {
    for (const { id } of outlinesAhead) if (seen.at(-1) !== id) seen.push(id);
  });
  shaped.length = 0;
  for (const title of ["first", "left out", "last"])
    useDocument.getState().dispatchInGesture({ kind: "change-settings", changes: { title } });
  await settle();
  expect(seen).toEqual(["first", "last"]);
  expect(shaped).toEqual(["last"]);
  useDocument.getState().endGesture();
  await settle();
  expect(useDesign.getState()).toMatchObject({ outlinesAhead: [], isComputing: false });
  expect(useDesign.getState().design?.project.title).toBe("last");
  stopWatching();
  stop();
});

it("shows nothing of the tray before once another has taken its place, not even what was being computed", async () => {
  const answers: (() => void)[] = [];
  const shape = (project: Project) =>
    new Promise<Shapes>((resolve) => {
      answers.push(() => resolve({ ...sampleDesign, project }));
    });
  const answerNext = async () => {
    await settle();
    answers.shift()?.();
    await settle();
  };
  useDesign.setState({ design: sampleDesign, failure: undefined });
  useDocument.getState().replace({ ...sampleProject, title: "before" });
  const stop = followDocument(coreThat(shape));
  await settle();
  useDocument.getState().replace({ ...sampleProject, title: "after" });
  expect(useDesign.getState().design).toBeUndefined();
  await answerNext();
  expect(useDesign.getState().design).toBeUndefined();
  await answerNext();
  expect(useDesign.getState().design?.project.title).toBe("after");
  stop();
});
