import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Project } from "../../core/project/index.ts";
import { writeProject } from "../../core/project/index.ts";
import { badCases, goodProject } from "./bad-projects.ts";

const folder = mkdtempSync(join(tmpdir(), "traywright-pack-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly complaint: string;
}

/** The pack command as one file: it starts five times as fast, and is called many times here. */
const BUILT = "node_modules/.pack-tests/cli.js";
beforeAll(() => {
  const arguments_ = [
    "build",
    "--ssr",
    "../core/cli.ts",
    "--outDir",
    "../node_modules/.pack-tests",
    "--emptyOutDir",
  ];
  const { status } = spawnSync(process.execPath, [
    "node_modules/vite/bin/vite.js",
    ...arguments_,
    "--logLevel",
    "error",
  ]);
  expect(status).toBe(0);
});

/** Runs the pack command. */
const pack = (given: readonly string[], environment: Readonly<Record<string, string>> = {}): Run =>
  run([BUILT, ...given], environment);

/** Runs it as `npm run pack` does. */
const packAsWritten = (given: readonly string[]): Run => run(["--import", "tsx", "core/cli.ts", ...given]);

function run(given: readonly string[], environment: Readonly<Record<string, string>> = {}): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, given, {
    encoding: "utf8",
    env: { ...process.env, ...environment },
    timeout: 60_000,
  });
  return { code: status, out: stdout, complaint: stderr };
}

function fileOf(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

/** Path and hash of every file of a pack. */
function fingerprints(outDir: string): Readonly<Record<string, string>> {
  const entries = readdirSync(outDir, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  return Object.fromEntries(
    entries
      .map(({ parentPath, name }) => join(parentPath, name))
      .sort()
      .map((path) => [
        path.slice(outDir.length + 1),
        createHash("sha256").update(readFileSync(path)).digest("hex"),
      ]),
  );
}

interface ReportHead {
  readonly parts: readonly {
    readonly id: string;
    readonly flatAreaMm2: number;
    readonly strips: readonly { readonly id: string }[];
  }[];
  readonly problems: readonly unknown[];
}
const reportIn = (outDir: string) =>
  JSON.parse(readFileSync(join(outDir, "report.json"), "utf8")) as ReportHead;

describe("the pack of an example", () => {
  it.each(["practice-piece", "hill-climb-floor"])(
    "%s is complete, ends with 0, and has no problem",
    (name) => {
      const outDir = join(folder, name);
      const { code, complaint } = pack([`web/examples/${name}.json`, outDir]);
      expect(complaint).toBe("");
      expect(code).toBe(0);
      const report = reportIn(outDir);
      expect(report.problems).toEqual([]);
      const files = Object.keys(fingerprints(outDir));
      const always = ["build-book.pdf", "templates.pdf", "report.json", "project.json", "everything.zip"];
      expect(files).toEqual(expect.arrayContaining(always));
      for (const { id } of report.parts.flatMap(({ strips }) => strips))
        expect(files).toContain(`svg/${id}.svg`);
      expect(files.filter((file) => file.startsWith("csv/")).length).toBeGreaterThan(2);
    },
    60_000,
  );

  it("is the same to the byte when it is made again, built, in another time zone and language", () => {
    const first = join(folder, "zone-1");
    const second = join(folder, "zone-2");
    packAsWritten(["web/examples/practice-piece.json", first]);
    pack(["web/examples/practice-piece.json", second], { TZ: "Asia/Kolkata", LANG: "de_DE.UTF-8" });
    expect(fingerprints(second)).toEqual(fingerprints(first));
  }, 60_000);
});

describe("a project with something wrong", () => {
  const cases = badCases();

  /** All that is wrong in one project, each thing under an id of its own, beside the good section. */
  function allAtOnce(): Project {
    const good = goodProject();
    const items = cases.flatMap(({ project }, index) =>
      project.items
        .slice(1)
        .map((item) => ({ ...item, id: `bad-${index}`, name: `Wrong ${index}`, number: 10 + index })),
    );
    const profiles = new Map(cases.flatMap(({ project }) => project.profiles).map((one) => [one.id, one]));
    const stock = cases.flatMap(({ project }) => project.stock.slice(good.stock.length));
    return {
      ...good,
      profiles: [...profiles.values()],
      items: [...good.items, ...items],
      stock: [...good.stock, ...stock.map((one, index) => ({ ...one, id: `odd-${index}` }))],
    };
  }

  it("ends with 1, names every wrong thing in words, and still makes the rest", () => {
    const outDir = join(folder, "all-at-once");
    const goodDir = join(folder, "good");
    const project = allAtOnce();
    const { code, out, complaint } = pack([fileOf("all.json", writeProject(project)), outDir]);
    expect(complaint).toBe("");
    expect(code).toBe(1);
    expect(out).toContain("Not made: ");
    for (const { name } of project.items.slice(1)) {
      if (name !== nameOfProfileFault(project)) expect(out).toContain(name);
    }
    expect(out).toContain("Profile falls-back");
    expect(pack([fileOf("good.json", writeProject(goodProject())), goodDir]).code).toBe(0);
    const goodParts = reportIn(goodDir).parts;
    expect(reportIn(outDir).parts.filter(({ id }) => id.startsWith("S1"))).toEqual(goodParts);
  }, 60_000);
});

/** The section whose profile is at fault: the problem names the profile. */
const nameOfProfileFault = (project: Project): string | undefined =>
  project.items.find((item) => item.kind === "section" && item.profileId === "falls-back")?.name;

describe("what is no project", () => {
  const text = writeProject(goodProject());
  const cases: readonly (readonly [string, string, RegExp])[] = [
    ["text that is not JSON", "a floor, about two metres", /not a project/],
    ["a file that is cut off", text.slice(0, text.length / 2), /cut off/],
    [
      "a number that is not one",
      text.replace('"thicknessMm": 10', '"thicknessMm": NaN'),
      /not a project|not JSON/,
    ],
    ["another program's JSON", '{"name": "x", "version": "1.0.0"}', /not a Traywright project/],
    ["an empty file", "", /not a project/],
    ["a file of a newer version", text.replace(/"version": \d+/, '"version": 999'), /newer/],
    [
      "a word where a number belongs",
      text.replace('"thicknessMm": 10', '"thicknessMm": "thick"'),
      /thicknessMm/,
    ],
    ["a field that is missing", text.replace('"symmetry": "mirrored",', ""), /symmetry/],
  ];

  it.each(cases)(
    "%s gives one clear line and 2, and nothing is written",
    (title, content, words) => {
      const outDir = join(folder, `none-${title.replaceAll(" ", "-")}`);
      const { code, out, complaint } = pack([fileOf("none.json", content), outDir]);
      expect(code).toBe(2);
      expect(out).toBe("");
      expect(complaint.trimEnd().split("\n")).toHaveLength(1);
      expect(complaint).toMatch(words);
      expect(readdirSync(folder)).not.toContain(outDir.slice(folder.length + 1));
    },
    20_000,
  );

  it("a file that is not there, and a wrong call, give one clear line and 2", () => {
    expect(pack([join(folder, "missing.json"), folder])).toMatchObject({ code: 2, out: "" });
    expect(pack([]).complaint).toMatch(/^Usage: .*PROJECT\.json OUTDIR\n$/);
    expect(pack(["a", "b", "c"]).code).toBe(2);
  }, 20_000);

  it("a folder that cannot be made gives one clear line and 2", () => {
    const blocked = fileOf("blocked", "a file stands where the folder should be");
    const { code, complaint } = pack([fileOf("fine.json", text), join(blocked, "out")]);
    expect(code).toBe(2);
    expect(complaint.trimEnd().split("\n")).toHaveLength(1);
  }, 20_000);
});
