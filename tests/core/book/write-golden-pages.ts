import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writePdf } from "../../../core/writers/index.ts";
import { readFonts } from "../../read-fonts.ts";
import { changedPages, GOLDEN_FILE, goldenPages, readGolden } from "./golden-pages.ts";
import { printedSets } from "./printed-demo.ts";

/** Dots per inch of the pictures: letters of 2.5 mm can be read. */
const DOTS_PER_INCH = "90";

/**
 * Writes the pages of the demo tray that are not as they were into a folder, as one PDF and, where pdftoppm is installed,
 * as pictures; names them; and takes them as they are now. Look at every one before it is committed.
 */
function writeGoldenPages(folder: string): void {
  const sets = printedSets();
  const pages = goldenPages(sets);
  const before = existsSync(GOLDEN_FILE) ? readGolden() : [];
  const changed = changedPages(
    before,
    pages.map(({ line }) => line),
  );
  writeFileSync(GOLDEN_FILE, pages.map(({ line }) => `${line}\n`).join(""));
  const shown = pages.filter(({ key }) => changed.includes(key));
  for (const key of changed)
    process.stdout.write(`${shown.some((one) => one.key === key) ? "changed" : "gone"}: ${key}\n`);
  if (shown.length === 0) return;
  mkdirSync(folder, { recursive: true });
  const pdf = join(folder, "changed.pdf");
  writeFileSync(pdf, writePdf({ ...sets.book, pages: shown.map(({ page }) => page) }, readFonts()));
  const { status } = spawnSync("pdftoppm", ["-r", DOTS_PER_INCH, "-png", pdf, join(folder, "changed")]);
  process.stdout.write(
    `${shown.length} pages in ${pdf}${status === 0 ? ", and as pictures beside it" : ""}\n`,
  );
}

writeGoldenPages(process.argv[2] ?? join(tmpdir(), "golden-pages"));
