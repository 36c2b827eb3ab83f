export { type Comb, combsOf } from "./comb-of.ts";
export { wordComb } from "./word-comb.ts";
