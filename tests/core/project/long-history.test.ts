import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  type Command,
  closeGesture,
  type History,
  historyOf,
  jumpHistory,
  nameOfCommand,
  type Project,
  pushHistory,
  pushInGesture,
  readProject,
  redoHistory,
  undoHistory,
  wordsOfCommand,
  writeProject,
} from "../../../core/project/index.ts";
import { anyRun, diceOf } from "./any-command.ts";
import { twoSections, withFence } from "./small-projects.ts";

const COMMANDS = 500;
const LOADED_MACHINE_MS = 60_000;

function demo(): Project {
  const read = readProject(readFileSync("web/examples/hill-climb-floor.json", "utf8"));
  if (!read.ok) throw new Error(read.message);
  return read.project;
}

/** The last document of a short run of commands from a small tray: another tray for each seed. */
function randomTray(seed: number): Project {
  const { projects } = anyRun(seed % 2 === 0 ? withFence() : twoSections(), 40, diceOf(seed));
  return projects.at(-1) ?? withFence();
}

const trays: readonly (readonly [string, () => Project, number])[] = [
  ["the demo", demo, 20261125],
  ...[1, 2, 3, 4, 5].map((seed) => [`random tray ${seed}`, () => randomTray(seed), seed * 7919] as const),
];

/** A history that the commands were entered into, every fifth run of three as one gesture, with the rest alone. */
function entered(start: Project, commands: readonly Command[], projects: readonly Project[]): History {
  return commands.reduce((history, command, index) => {
    const after = projects[index + 1] ?? start;
    if (index % 15 < 3) {
      const opened = pushInGesture(history, after, wordsOfCommand(history.now, command));
      return index % 15 === 2 ? closeGesture(opened) : opened;
    }
    return pushHistory(history, after, nameOfCommand(history.now, command));
  }, historyOf(start));
}

describe.each(trays)("five hundred commands of all kinds on %s", (_name, trayOf, seed) => {
  const start = trayOf();
  const { commands, projects } = anyRun(start, COMMANDS, diceOf(seed));
  const last = projects.at(-1) ?? start;
  const full = entered(start, commands, projects);

  it("change the tray, most of them, and every kind among them", () => {
    const changing = commands.filter((_, index) => projects[index] !== projects[index + 1]);
    expect(changing.length).toBeGreaterThan(COMMANDS / 3);
    expect(new Set(commands.map(({ kind }) => kind)).size).toBeGreaterThan(25);
  });

  it(
    "are taken back to the first byte and made again to the last",
    () => {
      const [first, end] = [writeProject(start), writeProject(last)];
      let history = full;
      for (let step = 0; step < COMMANDS; step += 1) history = undoHistory(history);
      expect(writeProject(history.now)).toBe(first);
      for (let step = 0; step < COMMANDS; step += 1) history = redoHistory(history);
      expect(writeProject(history.now)).toBe(end);
      expect(end).not.toBe(first);
    },
    LOADED_MACHINE_MS,
  );

  it("give the same document at every step, whether jumped to or done again from the start", () => {
    const dice = diceOf(seed + 1);
    for (let times = 0; times < 40; times += 1) {
      const index = Math.floor(dice() * full.steps.length);
      const jumped = jumpHistory(jumpHistory(full, Math.floor(dice() * full.steps.length)), index);
      expect(jumped.now).toBe(full.steps[index]?.project);
      expect(projects).toContain(jumped.now);
      let walked = jumpHistory(full, 0);
      while (walked.at < index) walked = redoHistory(walked);
      expect(walked.now).toBe(jumped.now);
    }
  });

  it("share what they do not touch: a step costs no copy of the tray", () => {
    const shared = projects.slice(1).filter((project, index) => {
      const before = projects[index];
      return before !== undefined && project.materials === before.materials;
    });
    expect(shared.length).toBe(COMMANDS);
  });

  it("all have names", () => {
    expect(full.steps.every(({ name }) => name.trim() !== "" && !name.includes("undefined"))).toBe(true);
  });
});
