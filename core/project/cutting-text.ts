import * as v from "valibot";
import type { Cutting } from "./copies.ts";
import { ItemSchema, OpeningSchema, ProfileSchema } from "./item-schemas.ts";
import { CURRENT_VERSION } from "./schema.ts";
import { Id } from "./typed-fields.ts";

const CuttingSchema = v.strictObject({
  format: v.literal("traywright-cutting"),
  version: v.literal(CURRENT_VERSION),
  projectId: Id,
  items: v.array(ItemSchema),
  openings: v.array(OpeningSchema),
  profiles: v.array(ProfileSchema),
  needed: v.array(ProfileSchema),
  freed: v.array(ItemSchema),
  others: v.array(v.strictObject({ id: Id, shape: v.string() })),
});

/** What reading copied text gives: the things in it, or in one sentence why there are none. */
export type CuttingResult =
  | { readonly ok: true; readonly cutting: Cutting }
  | { readonly ok: false; readonly message: string };

/** More text than any tray has is not looked at. */
const MOST_LETTERS = 20_000_000;

/** Things as text, to be carried to another tray through the clipboard. */
export const writeCutting = (cutting: Cutting): string =>
  JSON.stringify({ format: "traywright-cutting", version: CURRENT_VERSION, ...cutting }, writeNumber);

/** The things in copied text. Text of any other kind gives one sentence, and nothing is guessed. */
export function readCutting(text: string): CuttingResult {
  if (text.trim() === "") return refuse("Nothing has been copied yet.");
  const document = text.length > MOST_LETTERS ? undefined : parseJson(text);
  const head = v.safeParse(v.looseObject({ format: v.string() }), document);
  if (!head.success || head.output.format !== "traywright-cutting")
    return refuse(
      "What was copied last is not part of a drawing. Choose something on a board and copy it first.",
    );
  const read = v.safeParse(CuttingSchema, document);
  if (read.success) {
    const { format: _format, version: _version, ...cutting } = read.output;
    return { ok: true, cutting };
  }
  return head.output.version === CURRENT_VERSION
    ? refuse("What was copied has faults and cannot be read. Copy it again.")
    : refuse(
        "What was copied comes from another version of the program. Open its file here, and copy it again.",
      );
}

const refuse = (message: string): CuttingResult => ({ ok: false, message });

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function writeNumber(_key: string, value: unknown): unknown {
  return typeof value === "number" && !Number.isFinite(value) ? String(value) : value;
}
