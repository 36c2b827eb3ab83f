import { CircleAlert, TriangleAlert } from "lucide-react";
import { levelOf, type ProblemPlace, wordProblem } from "../../../core/foundation/index.ts";
import { useDesign } from "../../stores/index.ts";

/** What is wrong with the chosen thing, in words, beside its numbers. */
export function ChosenProblems({ belongs }: { readonly belongs: (place: ProblemPlace) => boolean }) {
  const problems = useDesign((state) => state.design?.problems);
  const own = (problems ?? []).filter((problem) => belongs(problem.place));
  if (own.length === 0) return null;
  return (
    <ul className="chosen-problems" data-testid="chosen-problems">
      {own.map((problem) => {
        const level = levelOf(problem);
        const text = wordProblem(problem);
        return (
          <li key={text} data-level={level}>
            {level === "stop" ? (
              <CircleAlert aria-label="Stops" />
            ) : (
              <TriangleAlert aria-label="Look at this" />
            )}
            {text}
          </li>
        );
      })}
    </ul>
  );
}
