import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Whether qpdf stands on this machine; Debian and its kin have it as a package of that name. */
export const hasChecker = spawnSync("qpdf", ["--version"]).error === undefined;

/** What qpdf finds wrong with the structure and the streams of a PDF; nothing where all is well. */
export function faultsOf(bytes: Uint8Array): string {
  const folder = mkdtempSync(join(tmpdir(), "traywright-pdf-"));
  const path = join(folder, "checked.pdf");
  writeFileSync(path, bytes);
  const { status, stdout, stderr } = spawnSync("qpdf", ["--check", path], { encoding: "utf8" });
  rmSync(folder, { recursive: true, force: true });
  return status === 0 ? "" : `${stdout}${stderr}`;
}
