export { paperNeed } from "./paper-need.ts";
export { shoppingList } from "./shopping-list.ts";
export type { Bench, Need, ShoppingLine, ShoppingList, Unit } from "./types.ts";
export { amountWords, moneyWords } from "./word-line.ts";
