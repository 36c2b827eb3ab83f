import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { chromium } from "playwright-core";

/** A browser that runs, or why there is none: `tried` has one line for each way that was tried. */
export type FoundChromium =
  | { readonly ok: true; readonly path: string; readonly version: string }
  | { readonly ok: false; readonly tried: readonly string[] };

const INSTALLED = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/usr/bin/google-chrome-stable",
];
const COMMANDS = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

/**
 * The Chromium for the browser tests: the one that `CHROMIUM` names, else one that is installed, else the Debian
 * package (as root on Debian or Ubuntu), else the download of the browser library. `say` hears what is installed.
 */
export function findChromium(say: (line: string) => void): FoundChromium {
  const tried: string[] = [];
  const look = (path: string | undefined, origin: string): FoundChromium | undefined => {
    if (!path) return undefined;
    const version = versionOf(path);
    if (version) return { ok: true, path, version };
    tried.push(`${origin}: ${path} does not run`);
    return undefined;
  };

  const named = look(process.env.CHROMIUM, "named by CHROMIUM");
  if (named) return named;
  for (const path of installedPaths()) {
    const found = look(path, "installed");
    if (found) return found;
  }
  if (isRootOnDebian()) {
    say("No Chromium found. Installing the Debian package chromium (about 110 MB) …");
    run("apt-get", ["update", "-qq"]);
    run("apt-get", APT_INSTALL);
    const found = installedPaths()
      .map((path) => look(path, "Debian package"))
      .find(Boolean);
    if (found) return found;
    tried.push("the Debian package chromium could not be installed or does not run");
  } else {
    tried.push("the Debian package was not tried: it needs root on Debian or Ubuntu");
  }
  const kept = look(downloadedPath(), "downloaded earlier");
  if (kept) return kept;
  say("Downloading Chromium by the browser library, playwright-core …");
  const arguments_ = ["--no-install", "playwright-core", "install", "chromium"];
  if (run("npx", isRootOnDebian() ? [...arguments_, "--with-deps"] : arguments_)) {
    const found = look(downloadedPath(), "downloaded");
    if (found) return found;
  }
  tried.push("the download by playwright-core failed or does not run");
  return { ok: false, tried };
}

/** What to do when no Chromium could be had. */
export const CHROMIUM_ADVICE =
  "The browser tests need Chromium. Install it (Debian, Ubuntu: apt-get install chromium), or name one: CHROMIUM=/path/to/chromium npm test";

const APT_INSTALL = ["install", "-y", "-qq", "--no-install-recommends", "chromium"];

function versionOf(path: string): string | undefined {
  const { status, stdout } = spawnSync(path, ["--version"], { encoding: "utf8", timeout: 20_000 });
  return status === 0 && /chrom/i.test(stdout) ? stdout.trim() : undefined;
}

function installedPaths(): readonly string[] {
  const onPath = COMMANDS.map((command) =>
    spawnSync("which", [command], { encoding: "utf8" }).stdout?.trim(),
  ).filter((path) => path !== undefined && path !== "");
  return [...new Set([...INSTALLED.filter((path) => existsSync(path)), ...onPath])];
}

function isRootOnDebian(): boolean {
  if (process.getuid?.() !== 0 || !existsSync("/etc/os-release")) return false;
  return /^ID(_LIKE)?=.*(debian|ubuntu)/m.test(readFileSync("/etc/os-release", "utf8"));
}

function downloadedPath(): string | undefined {
  try {
    const path = chromium.executablePath();
    return existsSync(path) ? path : undefined;
  } catch {
    return undefined;
  }
}

function run(command: string, arguments_: readonly string[]): boolean {
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  return spawnSync(command, arguments_, { stdio: "inherit", env }).status === 0;
}
