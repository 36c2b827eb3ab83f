export { StandingLines } from "./StandingLines.tsx";
export { StartPage } from "./StartPage.tsx";
