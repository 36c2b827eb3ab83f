export { Look } from "./Look.tsx";
export { LookSwitch } from "./LookSwitch.tsx";
