export { BenchMode } from "./BenchMode.tsx";
