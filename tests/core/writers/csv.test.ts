import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { writeCsv, writeCsvFiles } from "../../../core/writers/index.ts";
import { practiceDesign } from "../book/practice-design.ts";

describe("CSV writer", () => {
  it("is read back by another program with commas, quotes and line breaks in place", () => {
    const header = ["name", "length mm"];
    const rows = [
      ['say "10 mm", twice', 128.4],
      ["two\r\nlines", -3],
      ["plain", 0],
      ["", 1e-3],
    ];
    const text = writeCsv({ header, rows });
    const read = Papa.parse<string[]>(text, { skipEmptyLines: true });
    expect(read.errors).toEqual([]);
    expect(read.data).toEqual([header, ...rows.map((row) => row.map(String))]);
    expect(text.endsWith("\r\n")).toBe(true);
  });

  it("writes every table with as many cells in each row as in its heading", () => {
    const files = writeCsvFiles(practiceDesign());
    expect(files.map((file) => file.name)).toContain("marking-out.csv");
    for (const { name, text } of files) {
      const { data } = Papa.parse<string[]>(text, { skipEmptyLines: true });
      for (const row of data) expect(row, name).toHaveLength(data[0]?.length ?? 0);
    }
  });

  it("keeps the marks of the marking-out table to a thousandth, the bevel beside each", () => {
    const design = practiceDesign();
    const text = writeCsvFiles(design).find((file) => file.name === "marking-out.csv")?.text ?? "";
    const rows = Papa.parse<string[]>(text, { skipEmptyLines: true }).data.slice(1);
    design.marking[0]?.rows.forEach((row, i) => {
      expect(Number(rows[i]?.[1])).toBeCloseTo(row.alongMm, 3);
      row.offsetsMm.forEach((offset, k) => {
        expect(Number(rows[i]?.[3 + 2 * k])).toBeCloseTo(offset, 3);
        expect(Number(rows[i]?.[4 + 2 * k])).toBeCloseTo(((row.bevelsRad[k] ?? 0) * 180) / Math.PI, 2);
      });
    });
  });
});
