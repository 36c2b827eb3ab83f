import * as v from "valibot";
import { isRecord, MIGRATIONS, type RawDocument } from "./migrations.ts";
import { CURRENT_VERSION, type Project, ProjectSchema } from "./schema.ts";

/** What reading a file gives: the document, or why there is none, in one sentence. */
export type ReadResult =
  | { readonly ok: true; readonly project: Project }
  | {
      readonly ok: false;
      readonly reason: "not-json" | "not-a-project" | "newer-version" | "invalid";
      readonly message: string;
    };

/** How many faults of an invalid file are told at once. */
const MOST_FAULTS = 3;

/**
 * The document in a project file: parsed, its version checked, brought up to the current version, validated.
 * Nothing is repaired or guessed; a file that is not right gives a reason and one clear sentence.
 */
export function readProject(text: string): ReadResult {
  const parsed = parseJson(text);
  if (!parsed.ok)
    return refuse("not-json", "This file is not a project: it is not JSON text, or it is cut off.");
  const document = parsed.value;
  if (!isRecord(document) || document.format !== "traywright")
    return refuse(
      "not-a-project",
      'This file is not a Traywright project: it does not say format "traywright".',
    );
  return readVersion(document);
}

/**
 * The text of a project file: the same document always gives the same bytes, fields in the order of the schema
 * however they came about. Ends with a line feed.
 */
export function writeProject(project: Project): string {
  const checked = v.safeParse(ProjectSchema, project);
  return `${JSON.stringify(checked.success ? checked.output : project, writeNumber, 2)}\n`;
}

function parseJson(text: string): { readonly ok: true; readonly value: unknown } | { readonly ok: false } {
  try {
    return { ok: true, value: JSON.parse(text.startsWith("\uFEFF") ? text.slice(1) : text) };
  } catch {
    return { ok: false };
  }
}

function readVersion(document: RawDocument): ReadResult {
  const { version } = document;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 0)
    return refuse("invalid", "This project file does not say which version it is.");
  if (version > CURRENT_VERSION)
    return refuse(
      "newer-version",
      `This project was saved by a newer Traywright (file version ${version}, this one reads up to ${CURRENT_VERSION}). Open it there, or bring this one up to date.`,
    );
  return validate(MIGRATIONS.slice(version).reduce((migrated, step) => step(migrated), document));
}

function validate(document: RawDocument): ReadResult {
  const checked = v.safeParse(ProjectSchema, document);
  if (checked.success) return { ok: true, project: checked.output };
  const faults = checked.issues.slice(0, MOST_FAULTS).map(wordFault);
  const more = checked.issues.length - faults.length;
  const rest = more > 0 ? `; and ${more} more` : "";
  return refuse("invalid", `This project file has faults: ${faults.join("; ")}${rest}.`);
}

/** `core.thicknessMm should be a number, and is "thick"`. */
function wordFault(issue: v.BaseIssue<unknown>): string {
  const deepest = deepestIssue(issue);
  const path = wordPath(deepest);
  if (deepest.received === "undefined") return `${path} is missing`;
  if (deepest.expected === "never") return `${path} is not known here`;
  return `${path} should be ${wordExpected(deepest)}, and is ${deepest.received}`;
}

function wordExpected(issue: v.BaseIssue<unknown>): string {
  if (issue.type === "regex") return issue.message;
  const expected = issue.expected ?? "something else";
  if (expected.includes("NaN")) return "a number";
  if (expected.startsWith("(")) return `one of ${expected.slice(1, -1).split(" | ").join(", ")}`;
  return PLAIN_WORDS[expected] ?? expected;
}

const PLAIN_WORDS: Readonly<Record<string, string>> = {
  Object: "a group of fields",
  Array: "a list",
  string: "text",
  boolean: "true or false",
};

/** A fault inside a choice is told by its first inner fault where that lies deeper. */
function deepestIssue(issue: v.BaseIssue<unknown>): v.BaseIssue<unknown> {
  const inner = issue.issues?.[0];
  return inner?.path && inner.path.length > (issue.path?.length ?? 0) ? deepestIssue(inner) : issue;
}

function wordPath(issue: v.BaseIssue<unknown>): string {
  const text = (issue.path ?? [])
    .map((step) => (typeof step.key === "number" ? `[${step.key}]` : `.${String(step.key)}`))
    .join("");
  return text.startsWith(".") ? text.slice(1) : text || "the file";
}

const refuse = (
  reason: "not-json" | "not-a-project" | "newer-version" | "invalid",
  message: string,
): ReadResult => ({ ok: false, reason, message });

function writeNumber(_key: string, value: unknown): unknown {
  return typeof value === "number" && !Number.isFinite(value) ? String(value) : value;
}
