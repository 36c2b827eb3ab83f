export { gridIn, stepFor, widerGrid, wordGrid } from "./grids.ts";
export { formatInches, formatThousandths, fromInches, toInches } from "./inches.ts";
export { type Lengths, lengthsIn } from "./lengths-in.ts";
export { readLengthMm, readNumber, type Units } from "./read-typed.ts";
