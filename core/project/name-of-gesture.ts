import type { Command, LineRef } from "./command-types.ts";
import { lineName, nameOfCommand, ownerName } from "./name-of-command.ts";
import type { Project } from "./schema.ts";

/** A command in words: alone, as one of several on the same line, and as one of several on the same thing. */
export interface CommandWords {
  readonly name: string;
  readonly onLine: string;
  readonly onThing: string;
  /** Whether a thing comes or goes by it: that names a gesture before anything that only shapes things. */
  readonly weight: "makes" | "shapes";
}

/** A command in words, told before it is applied. */
export function wordsOfCommand(project: Project, command: Command): CommandWords {
  const name = nameOfCommand(project, command);
  const weight = /^(add|delete)-(?!node)/.test(command.kind) ? "makes" : "shapes";
  if (!("line" in command)) return { name, onLine: name, onThing: thingOf(project, command) ?? name, weight };
  const verb = command.kind === "move-node" ? "Move" : "Change";
  return {
    name,
    onLine: `${verb} ${lineName(project, command.line)}`,
    onThing: `${verb} ${ownerName(project, command.line)}`,
    weight,
  };
}

/** `Change Outer floor` for every command that changes an item, so that it goes with those on its nodes. */
function thingOf(project: Project, command: Command): string | undefined {
  const isChange = command.kind.startsWith("change-");
  if (isChange && "itemId" in command) return `Change ${ownerName(project, itemLine(command.itemId))}`;
  return undefined;
}

const itemLine = (itemId: string): LineRef => ({ of: "item", itemId });

/**
 * One name for the commands of a gesture, in their order: their common name, else what they do to the one line or the
 * one thing they share, else the first and how many things more. `Move Outer floor and 2 more`.
 */
export function nameOfGesture(commands: readonly CommandWords[]): string {
  const making = commands.filter(({ weight }) => weight === "makes");
  const telling = making.length > 0 ? making : commands;
  const [first] = telling;
  if (first === undefined) return "Change nothing";
  for (const key of ["name", "onLine", "onThing"] as const)
    if (telling.every((words) => words[key] === first[key])) return first[key];
  const things = new Set(telling.map(({ onThing }) => onThing.replace(/^\S+ /, "")));
  return things.size === 1 ? first.onThing : `${first.onThing} and ${things.size - 1} more`;
}
