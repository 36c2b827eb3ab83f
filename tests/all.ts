import { spawnSync } from "node:child_process";
import { delimiter, resolve } from "node:path";
import { CHROMIUM_ADVICE, findChromium } from "./browser/find-chromium.ts";

/**
 * Everything that must hold before a change is good, in order; stops at the first step that fails. It looks for
 * Chromium first, so that the browser tests are never left out without a word.
 */

const STEPS: readonly { readonly heading: string; readonly command: readonly string[] }[] = [
  { heading: "Types of the core, without browser and Node", command: ["tsc", "-p", "core/tsconfig.json"] },
  { heading: "Types of everything", command: ["tsc"] },
  { heading: "Lint and format", command: ["biome", "check", "--error-on-warnings", "."] },
  { heading: "Layers: who imports whom", command: ["tsx", "tests/layers.ts"] },
  { heading: "Unit and source checks", command: ["vitest", "run", "--project", "unit", "--project", "page"] },
  { heading: "Browser tests", command: ["vitest", "run", "--project", "browser"] },
];

const say = (line: string) => process.stdout.write(`${line}\n`);

function main(): number {
  say("\n== Chromium for the browser tests");
  const found = findChromium(say);
  if (!found.ok) {
    for (const line of found.tried) say(`  ${line}`);
    say(CHROMIUM_ADVICE);
    return 1;
  }
  say(`${found.version}, ${found.path}`);

  const env = {
    ...process.env,
    CHROMIUM: found.path,
    PATH: [resolve("node_modules/.bin"), process.env.PATH].join(delimiter),
  };
  for (const [index, { heading, command }] of STEPS.entries()) {
    say(`\n== ${index + 1} of ${STEPS.length}: ${heading}`);
    const [program = "", ...arguments_] = command;
    const { status } = spawnSync(program, arguments_, { stdio: "inherit", env });
    if (status !== 0) {
      say(`\nFAILED at step ${index + 1} of ${STEPS.length}: ${heading}. ${index} passed, 1 failed.`);
      return 1;
    }
  }
  say(`\nAll ${STEPS.length} steps passed, 0 failed.`);
  return 0;
}

process.exitCode = main();
