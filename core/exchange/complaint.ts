/** What is wrong with a file from elsewhere, as data; `line` counts from 1 as an editor does. */
export type Complaint =
  | { readonly kind: "nothing-in-it" }
  | { readonly kind: "no-text" }
  | { readonly kind: "too-long"; readonly megabytes: number }
  | { readonly kind: "no-svg" }
  | { readonly kind: "damaged"; readonly line: number; readonly why: string }
  | { readonly kind: "path-data"; readonly line: number; readonly name: string; readonly rest: string }
  | {
      readonly kind: "element-value";
      readonly line: number;
      readonly name: string;
      readonly attribute: string;
      readonly value: string;
    }
  | { readonly kind: "odd-points"; readonly line: number; readonly name: string }
  | { readonly kind: "not-drawn"; readonly line: number; readonly name: string }
  | { readonly kind: "no-lines" }
  | { readonly kind: "wrong-count"; readonly line: number; readonly text: string; readonly count: number }
  | { readonly kind: "no-number"; readonly line: number; readonly cell: string }
  | { readonly kind: "too-few"; readonly count: number }
  | { readonly kind: "more"; readonly count: number };

/** A complaint in plain words: where, what, and what to do. */
export function wordComplaint(complaint: Complaint): string {
  const { kind } = complaint;
  switch (kind) {
    case "nothing-in-it":
      return "The file is empty.";
    case "no-text":
      return "This is neither an SVG nor a table of numbers: it holds bytes that are no text.";
    case "too-long":
      return `The file has ${complaint.megabytes} MB; more than 20 MB is not read. Keep only the line that is wanted.`;
    case "no-svg":
      return "There is no <svg> in this file.";
    case "damaged":
      return `Line ${complaint.line}: the file is damaged or cut off here (${complaint.why}). What stands before is read.`;
    case "path-data":
      return `Line ${complaint.line}, ${complaint.name}: its path cannot be read from “${complaint.rest}” on. What stands before is read.`;
    case "element-value":
      return `Line ${complaint.line}, ${complaint.name}: ${complaint.attribute}=“${complaint.value}” cannot be read. It is left out.`;
    case "odd-points":
      return `Line ${complaint.line}, ${complaint.name}: an x without a y at the end of its points. That one is left out.`;
    case "not-drawn":
      return `Line ${complaint.line}: ${complaint.name} is no outline and is left out. Turn it into paths first if it is wanted.`;
    case "no-lines":
      return "There is no line in this file that could be taken.";
    case "wrong-count":
      return `Line ${complaint.line}: “${complaint.text}” has ${wordCount(complaint.count)}; two are wanted.`;
    case "no-number":
      return `Line ${complaint.line}: “${complaint.cell}” is no number.`;
    case "too-few":
      return `There ${complaint.count === 1 ? "is one point" : `are ${wordNumber(complaint.count)} points`} in this file; a line needs two.`;
    case "more":
      return `And ${complaint.count} more of this kind.`;
  }
}

const NUMBERS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
const wordNumber = (count: number): string => NUMBERS[count] ?? String(count);
const wordCount = (count: number): string => `${wordNumber(count)} ${count === 1 ? "number" : "numbers"}`;
