import { nameOfItem, type Transition, type TransitionChanges } from "../../../core/project/index.ts";
import { rulingAt } from "../../../core/rulings/index.ts";
import { Choice, TextField, useLengths } from "../../controls/index.ts";
import { codeOfItem, TwistFigures } from "../../drawings/index.ts";
import { HelpMark } from "../../help/index.ts";
import { useDesign, useDocument } from "../../stores/index.ts";
import { ChosenProblems } from "./ChosenProblems.tsx";
import { CoreFields } from "./CoreFields.tsx";
import { DeleteButton } from "./DeleteButton.tsx";
import { EaseFields } from "./EaseFields.tsx";
import { JointOffers } from "./JointOffers.tsx";
import { TransitionEdgeFields } from "./TransitionEdgeFields.tsx";

/** A transition as numbers: its two edges, the side of its core and its foam. */
export function TransitionPanel({ transition }: { readonly transition: Transition }) {
  const change = (changes: TransitionChanges) =>
    useDocument.getState().dispatch({ kind: "change-transition", itemId: transition.id, changes });
  return (
    <>
      <header>
        <h2>
          <span className="code">{codeOfItem(transition)}</span> {nameOfItem(transition)}
        </h2>
        <HelpMark term="transition" />
        <DeleteButton word="Delete transition" commands={[{ kind: "delete-item", itemId: transition.id }]} />
      </header>
      <ChosenProblems belongs={({ itemId }) => itemId === transition.id} />
      <TextField
        label="Name"
        value={transition.name}
        mostLetters={60}
        onChange={(name) => change({ name })}
      />
      <Twist itemId={transition.id} />
      <TransitionEdgeFields transition={transition} side="first" />
      <TransitionEdgeFields transition={transition} side="second" />
      {transition.first.kind === "free" || transition.second.kind === "free" ? (
        <EaseFields transition={transition} />
      ) : null}
      <JointOffers itemId={transition.id} />
      <h3 className="caption">
        <HelpMark term="ruling">Rulings</HelpMark>
      </h3>
      <Choice
        label="Chosen for"
        value={transition.rulings ?? "least twist"}
        options={[
          { value: "least twist", word: "the least twist" },
          { value: "least strain", word: "the least strain of the foam" },
        ]}
        testId="rulings-aim"
        onChange={(rulings) => change({ rulings: rulings === "least twist" ? undefined : rulings })}
      />
      <h3 className="caption">Core</h3>
      <Choice
        label="The foam lies"
        value={transition.coreSide ?? "above"}
        options={[
          { value: "above", word: "above the drawn surface" },
          { value: "below", word: "below it" },
        ]}
        testId="core-side"
        onChange={(coreSide) => change({ coreSide: coreSide === "above" ? undefined : coreSide })}
      />
      <CoreFields item={transition} onChange={(core) => change({ core })} />
    </>
  );
}

/** How much the sheet twists, as last computed; nothing while it cannot be made. */
function Twist({ itemId }: { readonly itemId: string }) {
  const sheet = useDesign((state) =>
    state.design?.sheets.find((other) => other.kind === "transition" && other.itemId === itemId),
  );
  const lengths = useLengths();
  if (sheet?.kind !== "transition") return null;
  const { x } = rulingAt(sheet.chart.surface, sheet.judgement.atSMm).from;
  return <TwistFigures twist={sheet.judgement} where={`at x ${lengths.show(x)}`} />;
}
