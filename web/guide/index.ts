export { GuideStrip } from "./GuideStrip.tsx";
export { startPractice } from "./guide-store.ts";
export { PracticeOffer } from "./PracticeOffer.tsx";
