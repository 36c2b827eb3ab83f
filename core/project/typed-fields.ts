import * as v from "valibot";

/** An id of the document: unique among its kind, chosen by whoever makes the thing. */
export const Id = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{1,40}$/, "an id of letters, digits, - and _"));

/** What the builder calls a thing. */
export const Name = v.pipe(v.string(), v.maxLength(60));

/** Numbers that JSON cannot hold are words in a file, so that no slip of the keyboard makes it unreadable. */
const OddNumbers = ["NaN", "Infinity", "-Infinity"] as const;

/** A number as typed; an odd one is let through here and named by `checkDocument`. */
export const Typed = v.union([v.number(), v.nan(), v.pipe(v.picklist(OddNumbers), v.transform(Number))]);

/** How a drawn thing stands on the board: locked against change, hidden from sight. It is made all the same. */
export const standingFields = {
  locked: v.exactOptional(v.literal(true)),
  hidden: v.exactOptional(v.literal(true)),
};
