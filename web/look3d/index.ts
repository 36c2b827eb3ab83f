export { lookKeys } from "./key-words.ts";
export { Look } from "./Look.tsx";
export { LookSwitch } from "./LookSwitch.tsx";
