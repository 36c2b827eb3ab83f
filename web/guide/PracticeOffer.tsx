import { Footprints } from "lucide-react";
import { startPractice } from "./guide-store.ts";
import "./guide.css";

/** For a first page: offers the guided practice, with what it takes. */
export function PracticeOffer() {
  return (
    <button
      type="button"
      className="practice-offer"
      data-testid="start-guide"
      onClick={() => void startPractice()}
    >
      <Footprints aria-hidden />
      <span>
        Practise for two minutes
        <small>Draw, type, round and print one small piece; a strip tells the next thing to do</small>
      </span>
    </button>
  );
}
