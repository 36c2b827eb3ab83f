import { describe, expect, it } from "vitest";
import {
  applyCommand,
  type Command,
  checkDocument,
  type LineRef,
  type Note,
  nameOfCommand,
  type Project,
  pinPlace,
  readProject,
  soundProject,
  type Underlay,
  writeProject,
} from "../../../core/project/index.ts";
import { withFence } from "./small-projects.ts";

const ONE: LineRef = { of: "item", itemId: "one" };
const note: Note = {
  id: "n",
  view: "plan",
  text: "Round this corner by hand after the skin",
  widthMm: 40,
  pin: { kind: "node", line: ONE, nodeId: "c" },
  leader: { x: 50, up: 80 },
};
const underlay: Underlay = {
  id: "u",
  name: "Photograph",
  view: "side",
  picture: "data:image/png;base64,AA==",
  widthPx: 400,
  heightPx: 300,
  origin: { x: 0, up: 0 },
  mmPerPx: 2,
  turnRad: 0,
  opacity: 0.5,
};
const noted: Project = { ...withFence(), notes: [note], underlays: [underlay] };

const edited = (project: Project, ...commands: readonly Command[]): Project =>
  commands.reduce(applyCommand, project);
const pinOf = (project: Project) => project.notes.map((one) => pinPlace(project, one));

describe("a note", () => {
  it("moves with the node that it is pinned to", () => {
    const moved = edited(noted, { kind: "move-node", line: ONE, nodeId: "c", to: [900, 250] });
    expect(pinOf(moved)).toEqual([{ x: 900, up: 250 }]);
  });

  it.each<readonly [string, Command]>([
    ["its node", { kind: "delete-node", line: ONE, nodeId: "c" }],
    ["the whole item", { kind: "delete-item", itemId: "one" }],
  ])("stays where it was when %s is deleted", (_title, command) => {
    const left = edited(noted, command);
    expect(left.notes[0]?.pin).toEqual({ kind: "place", at: { x: 1000, up: 200 } });
    expect(checkDocument(left).filter(({ place }) => place.noteId)).toEqual([]);
  });

  it("of a profile's node stands in the side view at its height", () => {
    const onProfile: Note = {
      ...note,
      view: "side",
      pin: { kind: "node", line: { of: "profile", profileId: "flat" }, nodeId: "q" },
    };
    expect(pinPlace(noted, onProfile)).toEqual({ x: 1000, up: 50 });
    expect(pinPlace(noted, { ...onProfile, view: "plan" })).toBeUndefined();
  });

  it("is added once, changed and deleted", () => {
    expect(edited(noted, { kind: "add-note", note })).toBe(noted);
    const changed = edited(noted, { kind: "change-note", noteId: "n", changes: { text: "Other" } });
    expect(changed.notes[0]?.text).toBe("Other");
    expect(edited(noted, { kind: "delete-note", noteId: "n" }).notes).toEqual([]);
    expect(edited(noted, { kind: "delete-note", noteId: "nobody" })).toBe(noted);
  });

  it("pinned to a node that is not there is named, and the rest is computed without it", () => {
    const lost = { ...noted, notes: [{ ...note, pin: { kind: "node", line: ONE, nodeId: "z" } as const }] };
    expect(checkDocument(lost)).toMatchObject([{ kind: "pin-without-node", place: { noteId: "n" } }]);
    expect(soundProject(lost).notes).toEqual([]);
    expect(soundProject(noted).notes).toEqual([note]);
  });
});

describe("a picture under the drawing", () => {
  it("is added once, changed and deleted", () => {
    expect(edited(noted, { kind: "add-underlay", underlay })).toBe(noted);
    const faded = edited(noted, { kind: "change-underlay", underlayId: "u", changes: { opacity: 0.2 } });
    expect(faded.underlays[0]?.opacity).toBe(0.2);
    expect(edited(noted, { kind: "delete-underlay", underlayId: "u" }).underlays).toEqual([]);
  });

  it("with a scale of nothing is named, and not drawn", () => {
    const flat = { ...noted, underlays: [{ ...underlay, mmPerPx: 0 }] };
    expect(checkDocument(flat)).toMatchObject([
      { kind: "number-out-of-range", field: "Millimetres a pixel", place: { underlayId: "u" } },
    ]);
    expect(soundProject(flat).underlays).toEqual([]);
  });

  it("from anywhere but the file itself is refused", () => {
    const elsewhere = { ...noted, underlays: [{ ...underlay, picture: "https://example.org/floor.png" }] };
    expect(readProject(writeProject(elsewhere))).toMatchObject({
      ok: false,
      message: expect.stringContaining("underlays[0].picture should be a PNG, JPEG or SVG picture"),
    });
  });
});

describe("locking and hiding", () => {
  const things = [
    { of: "item", itemId: "fence" },
    { of: "profile", profileId: "flat" },
    { of: "underlay", underlayId: "u" },
  ] as const;

  it("unlocked and shown again, a document has the bytes it had before", () => {
    const set = (standing: "locked" | "hidden" | "unlocked" | "shown"): Command => ({
      kind: "set-standing",
      things,
      standing,
    });
    const aside = edited(noted, set("locked"), set("hidden"));
    expect(aside.items[1]).toMatchObject({ locked: true, hidden: true });
    expect(aside.profiles[0]).toMatchObject({ locked: true, hidden: true });
    expect(aside.items[0]).toBe(noted.items[0]);
    expect(edited(aside, set("locked"))).toBe(aside);
    expect(readProject(writeProject(aside))).toEqual({ ok: true, project: aside });
    expect(writeProject(edited(aside, set("shown"), set("unlocked")))).toBe(writeProject(noted));
  });
});

it.each<readonly [string, Command]>([
  ["Pin Note “Round this corner by han…”", { kind: "add-note", note }],
  ["Delete Note “Round this corner by han…”", { kind: "delete-note", noteId: "n" }],
  ["Lay Photograph under the drawing", { kind: "add-underlay", underlay }],
  ["Change Photograph", { kind: "change-underlay", underlayId: "u", changes: {} }],
  [
    "Lock Fence and 1 more",
    {
      kind: "set-standing",
      things: [
        { of: "item", itemId: "fence" },
        { of: "item", itemId: "one" },
      ],
      standing: "locked",
    },
  ],
])("%s", (name, command) => {
  expect(nameOfCommand(noted, command)).toBe(name);
});
