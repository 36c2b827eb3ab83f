import { crc32, inflateRawSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { packFiles, writeZip } from "../../../core/writers/index.ts";
import { readFonts } from "../../read-fonts.ts";
import { practiceDesign } from "../book/practice-design.ts";

interface Entry {
  readonly path: string;
  readonly bytes: Buffer;
  readonly date: string;
}

/**
 * The entries of an archive after the published description of the format (PKWARE, .ZIP File Format Specification
 * 6.3.3, sections 4.3.7, 4.3.12 and 4.4.6), each checked by its sum.
 */
function readZip(archive: Uint8Array): readonly Entry[] {
  const bytes = Buffer.from(archive);
  const end = bytes.lastIndexOf(Buffer.from([0x50, 0x4b, 5, 6]));
  const count = bytes.readUInt16LE(end + 10);
  const entries: Entry[] = [];
  let place = bytes.readUInt32LE(end + 16);
  for (let i = 0; i < count; i++) {
    expect(bytes.readUInt32LE(place)).toBe(0x02014b50);
    const [method, date] = [bytes.readUInt16LE(place + 10), bytes.readUInt16LE(place + 14)];
    const [sum, packed] = [bytes.readUInt32LE(place + 16), bytes.readUInt32LE(place + 20)];
    const [nameLength, extra, note] = [28, 30, 32].map((offset) => bytes.readUInt16LE(place + offset));
    const local = bytes.readUInt32LE(place + 42);
    const path = bytes.toString("utf8", place + 46, place + 46 + (nameLength ?? 0));
    const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
    const raw = bytes.subarray(start, start + packed);
    const content = method === 8 ? inflateRawSync(raw) : raw;
    expect(crc32(content), path).toBe(sum);
    expect(bytes.readUInt16LE(place + 12), "midnight").toBe(0);
    entries.push({ path, bytes: content, date: dateOf(date) });
    place += 46 + (nameLength ?? 0) + (extra ?? 0) + (note ?? 0);
  }
  return entries;
}

const dateOf = (word: number): string =>
  [1980 + (word >> 9), (word >> 5) & 15, word & 31].map((one) => String(one).padStart(2, "0")).join("-");

describe("the archive of everything", { timeout: 60_000 }, () => {
  const { files } = packFiles(practiceDesign(), readFonts());

  it("holds book, templates, report, a drawing of every piece, every table and the project, to the byte", () => {
    const entries = readZip(writeZip(files, "2026-11-25"));
    const paths = entries.map(({ path }) => path);
    for (const path of ["build-book.pdf", "templates.pdf", "report.json", "svg/S1R.svg", "project.json"])
      expect(paths).toContain(path);
    expect(paths.filter((path) => path.startsWith("csv/")).length).toBeGreaterThan(10);
    expect(paths).toEqual(files.map(({ path }) => path));
    entries.forEach(({ bytes }, i) => {
      expect(Buffer.compare(bytes, Buffer.from(files[i]?.content ?? "")), paths[i]).toBe(0);
    });
  });

  it("is dated by the document, not by the clock, and a day that no archive can tell does not stop it", () => {
    for (const { date } of readZip(writeZip(files, "2026-11-25"))) expect(date).toBe("2026-11-25");
    for (const { date } of readZip(writeZip(files.slice(2, 3), "1066-10-14")))
      expect(date).toBe("1980-01-01");
    const again = writeZip(packFiles(practiceDesign(), readFonts()).files, "2026-11-25");
    expect(Buffer.compare(Buffer.from(again), Buffer.from(writeZip(files, "2026-11-25")))).toBe(0);
  });

  it("counts the pages of both PDFs as they are written, then every other file, and ends at all of them", () => {
    const seen: (readonly [number, number])[] = [];
    const made = packFiles(practiceDesign(), readFonts(), { onPage: (done, all) => seen.push([done, all]) });
    const pages = made.files
      .filter(({ path }) => path.endsWith(".pdf"))
      .reduce((sum, { content }) => {
        const text = Buffer.from(content).toString("latin1");
        return sum + (text.match(/\/Type \/Page\n/g) ?? []).length;
      }, 0);
    const all = pages + made.files.length - 2;
    expect(pages).toBeGreaterThan(10);
    expect(seen.slice(0, pages + 1)).toEqual(Array.from({ length: pages + 1 }, (_, i) => [i, all]));
    expect(seen.at(-1)).toEqual([all, all]);
  });
});
