import { beforeEach, describe, expect, it, vi } from "vitest";
import { writeProject } from "../../../core/project/index.ts";
import { useFiles } from "../../../web/files/index.ts";
import type { Snapshot } from "../../../web/history/snapshot-database.ts";
import { snapshotsOf, useSnapshots } from "../../../web/history/snapshot-store.ts";
import {
  deleteSnapshot,
  goBackTo,
  loadSnapshots,
  nextName,
  putBackDeleted,
  renameSnapshot,
  takeSnapshot,
} from "../../../web/history/snapshots.ts";
import { useDocument } from "../../../web/stores/index.ts";
import { sampleProject } from "../sample-design.ts";

/** A device whose storage can be denied or full. */
const device = vi.hoisted(() => ({ kept: new Map<string, unknown>(), trouble: "" }));
vi.mock("../../../web/history/snapshot-database.ts", () => {
  const orRefuse = () => {
    if (device.trouble !== "") throw new DOMException("", device.trouble);
  };
  return {
    keptSnapshots: async (slot: string) => {
      orRefuse();
      return [...device.kept.values()].filter((one) => (one as Snapshot).slot === slot);
    },
    keepSnapshot: async (snapshot: Snapshot) => {
      orRefuse();
      device.kept.set(snapshot.id, snapshot);
    },
    forgetSnapshot: async (id: string) => {
      orRefuse();
      device.kept.delete(id);
    },
  };
});

const shown = () => snapshotsOf(useSnapshots.getState().held, useFiles.getState().slot);
const titled = (title: string) =>
  useDocument.getState().dispatch({ kind: "change-settings", changes: { title } });
const title = () => useDocument.getState().project.title;

async function taken() {
  await takeSnapshot();
  const snapshot = shown().find(({ id }) => id === useSnapshots.getState().namingId);
  if (!snapshot) throw new Error("No snapshot was taken.");
  return snapshot;
}

beforeEach(() => {
  device.kept.clear();
  device.trouble = "";
  useSnapshots.setState({ held: [], namingId: undefined, deleted: undefined, message: undefined });
  useFiles.setState({ slot: "one" });
  useDocument.getState().setReadOnly(false);
  useDocument.getState().replace({ ...sampleProject, title: "First" });
});

describe("snapshots", () => {
  it("keep the tray as it was, and going back to one is a step that can be taken back", async () => {
    const snapshot = await taken();
    titled("Second");
    goBackTo(snapshot);
    expect(title()).toBe("First");
    expect(useDocument.getState().history.steps.at(-1)?.name).toBe("Go back to Snapshot 1");
    useDocument.getState().undo();
    expect(title()).toBe("Second");
  });

  it("enter no step where the tray is the same already", async () => {
    const snapshot = await taken();
    goBackTo(snapshot);
    expect(useDocument.getState().history.steps).toHaveLength(1);
    expect(useSnapshots.getState().message).toMatch(/already/);
  });

  it("are renamed on the device; an empty name leaves the old one", async () => {
    await renameSnapshot(await taken(), "  Before the ramp ");
    await renameSnapshot(shown()[0] as Snapshot, "   ");
    expect(shown().map(({ name }) => name)).toEqual(["Before the ramp"]);
    expect([...device.kept.values()]).toMatchObject([{ name: "Before the ramp" }]);
  });

  it("are deleted, and put back as they were", async () => {
    const snapshot = await taken();
    await deleteSnapshot(snapshot);
    expect([shown(), device.kept.size]).toEqual([[], 0]);
    await putBackDeleted();
    expect(shown()).toEqual([snapshot]);
    expect(device.kept.get(snapshot.id)).toMatchObject({ text: snapshot.text });
  });

  it("belong to one work; another shows its own", async () => {
    await taken();
    useFiles.setState({ slot: "two" });
    expect(shown()).toEqual([]);
    await taken();
    expect(shown()).toHaveLength(1);
    useSnapshots.setState({ held: [] });
    await loadSnapshots("one");
    useFiles.setState({ slot: "one" });
    expect(shown().map(({ slot }) => slot)).toEqual(["one"]);
  });

  it("are not taken in a tab that only looks on", async () => {
    useDocument.getState().setReadOnly(true);
    await takeSnapshot();
    expect(shown()).toEqual([]);
  });

  it.each([
    ["denied", "SecurityError", /keeps nothing/],
    ["full", "QuotaExceededError", /storage is full/],
  ])("last until the page is closed where storage is %s, and say so", async (_what, trouble, words) => {
    device.trouble = trouble;
    const snapshot = await taken();
    expect(snapshot.isKept).toBe(false);
    expect(useSnapshots.getState().message).toMatch(words);
    titled("Second");
    goBackTo(snapshot);
    expect(title()).toBe("First");
  });

  it("that cannot be read leave the tray as it is", async () => {
    const newer = writeProject(sampleProject).replace(/"version": \d+/, '"version": 99');
    goBackTo({ ...(await taken()), text: newer });
    expect(useDocument.getState().history.steps).toHaveLength(1);
    expect(useSnapshots.getState().message).toMatch(/could not be read.*newer/s);
  });

  it("are numbered after the highest number there is", () => {
    expect(nextName([])).toBe("Snapshot 1");
    expect(nextName([{ name: "Snapshot 7" }, { name: "Before" }, { name: "Snapshot 2" }])).toBe("Snapshot 8");
  });
});
