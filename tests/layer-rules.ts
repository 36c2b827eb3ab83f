import { dirname, join, normalize } from "node:path/posix";
import { type ImportLine, readImports } from "./read-imports.ts";

/** One file of the repository: its path from the top, with `/`, and its text. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** The order of the core: a folder imports only from what stands before it. */
export const CORE_ORDER: readonly string[] = [
  "foundation",
  "curves",
  "rulings",
  "project",
  "exchange",
  "starters",
  "beams",
  "laminate",
  "packing",
  "plates",
  "surfaces",
  "joints",
  "bending",
  "patterns",
  "cutting",
  "jig",
  "glue-up",
  "skins",
  "panels",
  "mounts",
  "marking",
  "stock",
  "schedule",
  "totals",
  "shopping",
  "solids",
  "book",
  "writers",
  "design.ts",
  "cli.ts",
];

/** Packages that the core may use: none of them needs a browser, a screen or a file system. */
export const CORE_PACKAGES = [
  "clipper2-ts",
  "fflate",
  "jspdf",
  "opentype.js",
  "papaparse",
  "robust-predicates",
  "saxes",
  "svgpath",
  "valibot",
];

const TOP_LEVEL = [
  "web",
  "core",
  "tests",
  "package.json",
  "package-lock.json",
  "tsconfig.json",
  "vite.config.ts",
  "README.md",
  "DEVELOPERS.md",
];
const NOT_KEPT = ["node_modules", "dist", "out"];

/**
 * Breaches of the layers in plain words, one a line, `path:line` first: a wrong arrow between folders, an import
 * past a folder's face, a core file that reaches for the screen or for Node, an import cycle.
 */
export function breachesOfLayers(files: readonly SourceFile[]): readonly string[] {
  const imports = files.flatMap((file) =>
    readImports(file.text).map((line) => ({ ...line, path: file.path, target: targetOf(file.path, line) })),
  );
  const paths = new Set(files.map((file) => file.path));
  return [
    ...files.flatMap((file) => breachesOfPlace(file.path)),
    ...imports.flatMap((line) => breachesOfImport(line).map((what) => `${line.path}:${line.line} ${what}`)),
    ...cyclesOf(imports.filter(({ target }) => paths.has(target))),
  ];
}

/** Names at the top level of the repository that have no place there. Dot-files and build results are free. */
export function breachesOfTopLevel(names: readonly string[]): readonly string[] {
  return names
    .filter((name) => !name.startsWith(".") && !name.endsWith(".log"))
    .filter((name) => !TOP_LEVEL.includes(name) && !NOT_KEPT.includes(name))
    .map((name) => `${name} has no place at the top level; it belongs in web, core or tests`);
}

interface PlacedImport extends ImportLine {
  readonly path: string;
  /** Path from the top of the repository, or the package's name. */
  readonly target: string;
}

function targetOf(path: string, { specifier }: ImportLine): string {
  if (!specifier.startsWith(".")) return specifier;
  return normalize(join(dirname(path), specifier.replace(/\?.*$/, "")));
}

function breachesOfPlace(path: string): readonly string[] {
  if (!path.startsWith("core/") || CORE_ORDER.includes(layerOf(path))) return [];
  return [`${path} lies in no layer of the core; the order is ${CORE_ORDER.join(", ")}`];
}

function breachesOfImport(line: PlacedImport): readonly string[] {
  const isRelative = line.specifier.startsWith(".");
  if (line.specifier === "") return ["imports something that is not written out; name the file"];
  if (line.path.startsWith("core/")) return isRelative ? fromCore(line) : packageFromCore(line);
  if (isRelative && line.target.startsWith("core/")) return faceOnly(line);
  if (isRelative && !line.target.startsWith("web/") && line.target !== "package.json") {
    return [`imports ${line.target}; web knows web and core only`];
  }
  return [];
}

function packageFromCore({ path, specifier }: PlacedImport): readonly string[] {
  if (specifier.startsWith("node:")) {
    return path === "core/cli.ts" ? [] : [`imports ${specifier}; only cli.ts may use Node`];
  }
  const name = specifier.split("/", specifier.startsWith("@") ? 2 : 1).join("/");
  return CORE_PACKAGES.includes(name) ? [] : [`imports ${name}, which the core may not use`];
}

function fromCore(line: PlacedImport): readonly string[] {
  const { path, target } = line;
  if (!target.startsWith("core/")) return [`imports ${target}; the core knows nothing outside itself`];
  const from = rankOf(path);
  const to = rankOf(target);
  if (layerOf(path) === layerOf(target)) return [];
  const arrow = to < from ? [] : [`imports ${layerOf(target)}, which stands after ${layerOf(path)}`];
  return [...arrow, ...faceOnly(line)];
}

function faceOnly({ target }: PlacedImport): readonly string[] {
  const layer = layerOf(target);
  const isFace = target === `core/${layer}/index.ts` || target === "core/design.ts";
  return isFace ? [] : [`imports ${target}; outside its folder only core/${layer}/index.ts is seen`];
}

const layerOf = (path: string): string => path.split("/")[1] ?? "";
const rankOf = (path: string): number => CORE_ORDER.indexOf(layerOf(path));

/** Each cycle once, named by its files in order. Depth first; a file that is met while still open closes a cycle. */
function cyclesOf(imports: readonly PlacedImport[]): readonly string[] {
  const targets = new Map<string, readonly string[]>();
  for (const { path, target } of imports) targets.set(path, [...(targets.get(path) ?? []), target]);
  const done = new Set<string>();
  const found: string[] = [];
  const visit = (path: string, open: readonly string[]) => {
    const since = open.indexOf(path);
    if (since >= 0) {
      found.push(`import cycle: ${[...open.slice(since), path].join(" → ")}`);
      return;
    }
    if (done.has(path)) return;
    for (const target of targets.get(path) ?? []) visit(target, [...open, path]);
    done.add(path);
  };
  for (const path of [...targets.keys()].sort()) visit(path, []);
  return found;
}
