import * as opentype from "opentype.js";
import { at } from "../foundation/index.ts";
import type { TextFace } from "./types.ts";

/** The three faces of the pages as TTF files: IBM Plex Sans regular and bold, JetBrains Mono regular. */
export interface Fonts {
  readonly sans: Uint8Array;
  readonly bold: Uint8Array;
  readonly mono: Uint8Array;
}

/** What the pages need to know of their letters; heights are those of capitals (ISO 3098), mm. */
export interface Lettering {
  /** Width of a text as it will be printed, after `legible`. */
  readonly widthMm: (text: string, face: TextFace, heightMm: number) => number;
  /** Size of the em square at which capitals stand `heightMm` high. */
  readonly emMm: (face: TextFace, heightMm: number) => number;
  /** The text with every sign that the face lacks replaced by one that can be seen. */
  readonly legible: (text: string, face: TextFace) => string;
}

interface MeasuredFace {
  readonly has: (character: string) => boolean;
  readonly advance: (character: string) => number;
  readonly capHeight: number;
}

/** Stand-ins that mean the same; what has none becomes the box, or a question mark where that is lacking too. */
const STAND_INS: Readonly<Record<string, string>> = {
  "\u2009": " ",
  "\u00a0": " ",
  "\u2212": "-",
  "⌀": "Ø",
  "→": ">",
  "←": "<",
};
const BOX = "□";

/**
 * Reads the faces once for measuring. Widths are the sum of single advances: no kerning, no ligatures, as the
 * PDF writer sets them.
 */
export function readLettering(fonts: Fonts): Lettering {
  const faces: Readonly<Record<TextFace, MeasuredFace>> = {
    sans: readFace(fonts.sans),
    bold: readFace(fonts.bold),
    mono: readFace(fonts.mono),
  };
  const legible = (text: string, face: TextFace) =>
    Array.from(text, (c) => legibleCharacter(c, faces[face])).join("");
  const emMm = (face: TextFace, heightMm: number) => heightMm / faces[face].capHeight;
  const widthMm = (text: string, face: TextFace, heightMm: number) => {
    let ems = 0;
    for (const character of legible(text, face)) ems += faces[face].advance(character);
    return ems * emMm(face, heightMm);
  };
  return { widthMm, emMm, legible };
}

function legibleCharacter(character: string, face: MeasuredFace): string {
  if (face.has(character)) return character;
  const standIn = STAND_INS[character];
  if (standIn !== undefined && face.has(standIn)) return standIn;
  return face.has(BOX) ? BOX : "?";
}

function readFace(bytes: Uint8Array): MeasuredFace {
  const font = parserOf(opentype)(bytes.slice().buffer, { lowMemory: true });
  const os2: unknown = font.tables.os2;
  const capUnits = hasCapHeight(os2) ? os2.sCapHeight : 0.7 * font.unitsPerEm;
  const advances = new Map<string, number>();
  const indexOf = (character: string) => font.charToGlyph(character).index;
  const known = new Map<string, boolean>();
  const has = (character: string): boolean => {
    const before = known.get(character);
    if (before !== undefined) return before;
    const found = indexOf(character) !== 0;
    known.set(character, found);
    return found;
  };
  const advance = (character: string): number => {
    const before = advances.get(character);
    if (before !== undefined) return before;
    const ems = (font.charToGlyph(character).advanceWidth ?? 0) / font.unitsPerEm;
    advances.set(character, ems);
    return ems;
  };
  return { has, advance, capHeight: capUnits / font.unitsPerEm };
}

const hasCapHeight = (table: unknown): table is { readonly sCapHeight: number } =>
  typeof table === "object" &&
  table !== null &&
  "sCapHeight" in table &&
  typeof table.sCapHeight === "number";

type Parser = typeof opentype.parse;

/** The library has named exports for bundlers, but only a default one for plain Node. */
function parserOf(library: {
  readonly parse?: Parser;
  readonly default?: { readonly parse: Parser };
}): Parser {
  return at(
    [library.parse, library.default?.parse].filter((parse) => parse !== undefined),
    0,
  );
}
