import { TriangleAlert } from "lucide-react";

/** The sign of a snapshot that the device does not keep. */
export function UnkeptSign() {
  return (
    <span className="unkept">
      <TriangleAlert aria-hidden className="sign look" /> only until this page is closed
    </span>
  );
}
