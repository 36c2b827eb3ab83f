import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import type { Fonts } from "./book/index.ts";
import { designTray, layOutCloth, layOutStock } from "./design.ts";
import { levelOf, type Problem, wordProblem } from "./foundation/index.ts";
import { readProject } from "./project/index.ts";
import { type PackFile, packFiles, writeZip } from "./writers/index.ts";

const USAGE = "Usage: npm run --silent pack -- PROJECT.json OUTDIR";
/** The archive beside the files that it holds. */
const ZIP_NAME = "everything.zip";

/** 0: all was made. 1: something could not be made, and is listed. 2: no project, or nowhere to write. */
type ExitCode = 0 | 1 | 2;

process.exitCode = main(process.argv.slice(2));

/** Reads a project file and writes the build book, the templates, SVG and CSV files and the report. */
function main(given: readonly string[]): ExitCode {
  const [projectPath, outDir, ...more] = given;
  if (!projectPath || !outDir || more.length > 0) return refuse(USAGE);
  const text = readText(projectPath);
  if (text === undefined) return refuse(`${projectPath}: there is no such file, or it cannot be read.`);
  const reading = readProject(text);
  if (!reading.ok) return refuse(`${projectPath}: ${reading.message}`);

  const design = layOutCloth(layOutStock(designTray(reading.project)));
  const { files, problems } = packFiles(design, readFonts());
  const zip = { path: ZIP_NAME, content: writeZip(files, design.project.titleBlock.issuedOn) };
  if (!writeFiles([...files, zip], outDir)) return refuse(`${outDir}: files cannot be written there.`);
  return tell(problems, `${files.length} files in ${outDir}, and all of them in ${ZIP_NAME}`);
}

function tell(problems: readonly Problem[], last: string): ExitCode {
  const stops = problems.filter((problem) => levelOf(problem) === "stop");
  const looks = problems.filter((problem) => levelOf(problem) === "look");
  const lines = [
    ...stops.map((problem) => `Not made: ${wordProblem(problem)}`),
    ...looks.map((problem) => `To look at: ${wordProblem(problem)}`),
    last,
  ];
  for (const line of lines) process.stdout.write(`${line}\n`);
  return stops.length > 0 ? 1 : 0;
}

function refuse(line: string): ExitCode {
  process.stderr.write(`${line.replaceAll("\n", " ")}\n`);
  return 2;
}

function readText(path: string): string | undefined {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return undefined;
  }
}

function writeFiles(files: readonly PackFile[], outDir: string): boolean {
  try {
    for (const { path, content } of files) {
      const target = join(outDir, path);
      mkdirSync(dirname(target), { recursive: true });
      writeFileSync(target, content);
    }
    return true;
  } catch {
    return false;
  }
}

/** The open fonts of the pages, from their packages. */
function readFonts(): Fonts {
  const find = createRequire(import.meta.url);
  const read = (path: string) => new Uint8Array(readFileSync(find.resolve(`@expo-google-fonts/${path}`)));
  return {
    sans: read("ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf"),
    bold: read("ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf"),
    mono: read("jetbrains-mono/400Regular/JetBrainsMono_400Regular.ttf"),
  };
}
