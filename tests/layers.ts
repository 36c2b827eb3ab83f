import { readdirSync, readFileSync } from "node:fs";
import { breachesOfLayers, breachesOfTopLevel, type SourceFile } from "./layer-rules.ts";

/** Reads the imports of core and web and the top level of the repository; prints each breach and fails on any. */

function sourcesIn(folder: string): readonly SourceFile[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name))
    .sort()
    .map((name) => `${folder}/${name.replaceAll("\\", "/")}`)
    .map((path) => ({ path, text: readFileSync(path, "utf8") }));
}

const files = [...sourcesIn("core"), ...sourcesIn("web")];
const breaches = [...breachesOfTopLevel(readdirSync(".")), ...breachesOfLayers(files)];
for (const breach of breaches) process.stdout.write(`${breach}\n`);
process.stdout.write(`${files.length} files, ${breaches.length} breaches\n`);
process.exitCode = breaches.length > 0 ? 1 : 0;
