import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { designTray } from "../../core/design.ts";
import { emptyProject, readProject } from "../../core/project/index.ts";
import { reportOf } from "../../core/writers/index.ts";
import { readExample } from "../read-example.ts";
import { panelFence, panelTray } from "./panels/panel-trays.ts";

const page = readFileSync("DEVELOPERS.md", "utf8");

/** The JSON examples of the page that are marked with a word behind `json`. */
const examples = (word: string): readonly unknown[] =>
  [...page.matchAll(new RegExp(`^\`\`\`json ${word}\n([\\s\\S]*?)^\`\`\``, "gm"))].map((match) =>
    JSON.parse(match[1] ?? ""),
  );

describe("the page for developers", () => {
  it("shows project examples that this version reads and computes without problems", () => {
    const [materials] = examples("materials");
    const empty = emptyProject({ id: "page", title: "Page", issuedOn: "2026-01-01" });
    const project = {
      ...empty,
      profiles: examples("profile"),
      items: examples("item"),
      openings: examples("opening"),
      notes: examples("note"),
      underlays: examples("underlay"),
      joints: examples("joints")[0],
      materials,
      jig: { ...empty.jig, boardId: "mdf" },
      glue: { ...empty.glue, glueId: "pu" },
      stock: empty.stock.filter(({ foamId }) => foamId === "xps"),
    };
    const reading = readProject(JSON.stringify(project));
    expect(reading).toMatchObject({ ok: true });
    if (reading.ok) expect(designTray(reading.project).problems).toEqual([]);
  });

  it("names every field of the report", () => {
    const report = reportOf(designTray(readExample("hill-climb-floor")));
    const paneled = reportOf(designTray(panelTray([panelFence(1, 200)])));
    const names = new Set([...namesIn(report), ...namesIn(paneled)]);
    expect(names.size).toBeGreaterThan(50);
    expect(
      [...names].filter((name) => !page.includes(`\`${name}\``) && !page.includes(`\`${name}[]\``)),
    ).toEqual([]);
  });
});

/** Every field name in a value, at any depth; points and what a problem points at are known by their own names. */
function namesIn(value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(namesIn);
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value)
    .filter(([name]) => !["u", "v", "x", "y", "z"].includes(name))
    .flatMap(([name, inner]) => [name, ...(name === "place" ? [] : namesIn(inner))]);
}
