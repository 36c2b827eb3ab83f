import { strToU8, type ZippableFile, zipSync } from "fflate";
import type { PackFile } from "./pack-files.ts";

/** The first and the last year that a ZIP archive can tell. */
const FIRST_YEAR = 1980;
const LAST_YEAR = 2099;
/** What is packed already is stored as it is. */
const PACKED = /\.pdf$/;

/**
 * The files as one ZIP archive, all dated midnight of the given day (yyyy-mm-dd, from the document): the same files give
 * the same bytes, in every time zone.
 */
export function writeZip(files: readonly PackFile[], issuedOn: string): Uint8Array {
  const entries = files.map(({ path, content }): [string, ZippableFile] => {
    const bytes = typeof content === "string" ? strToU8(content) : content;
    return [path, [bytes, { level: PACKED.test(path) ? 0 : 6 }]];
  });
  return zipSync(Object.fromEntries(entries), { mtime: midnightOf(issuedOn), os: 0 });
}

/** In local time, which is what the archive tells. */
function midnightOf(issuedOn: string): Date {
  const [year = FIRST_YEAR, month = 1, day = 1] = issuedOn.split("-").map(Number);
  return year < FIRST_YEAR || year > LAST_YEAR
    ? new Date(FIRST_YEAR, 0, 1)
    : new Date(year, Math.min(12, Math.max(1, month)) - 1, Math.min(31, Math.max(1, day)));
}
