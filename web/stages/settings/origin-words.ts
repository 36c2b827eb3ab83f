import type { Origin } from "../../../core/project/index.ts";

/** Where the value of a setting comes from, as a note beside it. */
export function originWords(origin: Origin | undefined): string {
  switch (origin) {
    case "published":
      return "From a published source.";
    case "published-weak":
      return "Published, but on thin grounds: check it on an offcut.";
    case "common-practice":
      return "Common practice: check it against the supplier's data sheet.";
    case "memory":
      return "A usual figure without a source: check it against the supplier's data sheet.";
    case "typed":
      return "Typed by you.";
    case undefined:
      return "";
  }
}
