import { readFileSync } from "node:fs";
import { type Project, readProject } from "../core/project/index.ts";

/** One of the example projects of `web/examples`. */
export function readExample(name: "hill-climb-floor" | "practice-piece"): Project {
  const reading = readProject(readFileSync(`web/examples/${name}.json`, "utf8"));
  if (!reading.ok) throw new Error(`${name}: ${reading.message}`);
  return reading.project;
}
