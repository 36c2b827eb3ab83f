import type { Item, Opening } from "../../core/project/index.ts";

const LETTERS: Readonly<Record<Item["kind"], string>> = {
  section: "S",
  fence: "F",
  transition: "T",
  plate: "P",
};

/** The letter and number that an item goes by; its parts add the hand. */
export const codeOfItem = (item: Pick<Item, "kind" | "number">): string =>
  `${LETTERS[item.kind]}${item.number}`;

/** The letter and number that an opening goes by. */
export const codeOfOpening = (opening: Pick<Opening, "number">): string => `O${opening.number}`;
