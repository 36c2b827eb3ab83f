import { useRef } from "react";
import { levelOf, type Problem, wordProblem } from "../../core/foundation/index.ts";
import { goToProblem } from "./go-to-problem.ts";
import { ProblemSign } from "./ProblemSign.tsx";

export const PROBLEMS_ID = "problem-list";

/** The open problems in words; a click on one goes to the thing it names. */
export function ProblemList({ problems }: { readonly problems: readonly Problem[] }) {
  const panel = useRef<HTMLDivElement>(null);
  return (
    <div ref={panel} id={PROBLEMS_ID} className="problem-list" popover="auto" data-testid="problem-list">
      <ul>
        {problems.map((problem, index) => (
          <li key={`${problem.kind}/${index}`}>
            <button
              type="button"
              className="plain"
              data-testid="problem"
              data-kind={problem.kind}
              onClick={() => {
                panel.current?.hidePopover();
                goToProblem(problem);
              }}
            >
              <ProblemSign level={levelOf(problem)} />
              <span>
                <b>{levelOf(problem) === "stop" ? "Not made. " : "Look at this. "}</b>
                {wordProblem(problem)}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
