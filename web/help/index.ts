export { HelpCard } from "./HelpCard.tsx";
export { HelpMark } from "./HelpMark.tsx";
export { isTermName, type Term, type TermName, termNames, termOf } from "./terms.ts";
