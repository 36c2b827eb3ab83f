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
  readonly letterOf: (character: string) => Letter;
  readonly capHeight: number;
}

/** A sign as a face prints it: itself or what stands in for it, and how far it carries on, in ems. */
interface Letter {
  readonly shown: string;
  readonly ems: number;
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
  const legible = (text: string, face: TextFace) => {
    const { letterOf } = faces[face];
    let shown = "";
    for (const character of text) shown += letterOf(character).shown;
    return shown;
  };
  const emMm = (face: TextFace, heightMm: number) => heightMm / faces[face].capHeight;
  const widthMm = (text: string, face: TextFace, heightMm: number) => {
    const { letterOf } = faces[face];
    let ems = 0;
    for (const character of text) ems += letterOf(character).ems;
    return ems * emMm(face, heightMm);
  };
  return { widthMm, emMm, legible };
}

function readFace(bytes: Uint8Array): MeasuredFace {
  const font = parserOf(opentype)(bytes.slice().buffer, { lowMemory: true });
  const os2: unknown = font.tables.os2;
  const capUnits = hasCapHeight(os2) ? os2.sCapHeight : 0.7 * font.unitsPerEm;
  const has = (character: string) => font.charToGlyph(character).index !== 0;
  const letters = new Map<string, Letter>();
  const letterOf = (character: string): Letter => {
    const known = letters.get(character);
    if (known !== undefined) return known;
    const shown = shownFor(character, has);
    const letter = { shown, ems: (font.charToGlyph(shown).advanceWidth ?? 0) / font.unitsPerEm };
    letters.set(character, letter);
    return letter;
  };
  return { letterOf, capHeight: capUnits / font.unitsPerEm };
}

/** The sign itself where a face has it, else its stand-in, else the box. */
function shownFor(character: string, has: (character: string) => boolean): string {
  if (has(character)) return character;
  const standIn = STAND_INS[character];
  if (standIn !== undefined && has(standIn)) return standIn;
  return has(BOX) ? BOX : "?";
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
