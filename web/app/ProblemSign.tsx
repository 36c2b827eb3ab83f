import { CircleCheck, OctagonAlert, TriangleAlert } from "lucide-react";

/** The sign of a problem's weight; the word stands beside it. */
export function ProblemSign({ level }: { readonly level: "stop" | "look" | "ok" }) {
  const Icon = { stop: OctagonAlert, look: TriangleAlert, ok: CircleCheck }[level];
  return <Icon className={`sign ${level}`} aria-hidden />;
}
