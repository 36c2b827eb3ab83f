import { Check, Feather, X } from "lucide-react";
import { useState } from "react";
import { formatNumber, toDegrees } from "../../../core/foundation/index.ts";
import type { Project, Transition } from "../../../core/project/index.ts";
import type { TwistJudgement } from "../../../core/rulings/index.ts";
import type { Easing } from "../../../core/surfaces/index.ts";
import { useLengths } from "../../controls/index.ts";
import { wordTwist } from "../../drawings/index.ts";
import { useDocument } from "../../stores/index.ts";
import { core } from "../../worker/index.ts";
import { LabelledCell } from "./LabelledCell.tsx";

/** So far a free edge may be moved at first: less than a hand sees in a floor of two metres, mm. */
const FIRST_BAND_MM = 5;

/** What easing found, and for which document. */
interface Found {
  readonly project: Project;
  readonly easing: Easing | undefined;
}

/** Takes twist out of a transition by moving the nodes of its free edge a little; shows it before it is taken. */
export function EaseFields({ transition }: { readonly transition: Transition }) {
  const project = useDocument((state) => state.project);
  const [bandMm, setBandMm] = useState(FIRST_BAND_MM);
  const [movesPlan, setMovesPlan] = useState(false);
  const [isLooking, setIsLooking] = useState(false);
  const [found, setFound] = useState<Found>();
  const look = async () => {
    setIsLooking(true);
    const easing = await core()
      .ease(project, transition.id, { bandMm, movesPlan })
      .catch(() => undefined);
    setFound({ project, easing });
    setIsLooking(false);
  };
  return (
    <section className="ease" data-testid="ease">
      <h3 className="caption">Ease the free edge</h3>
      <LabelledCell
        label="Nodes may move by"
        kind="fine length"
        value={bandMm}
        testId="ease-band"
        onChange={(typed) => setBandMm(Math.max(0, typed))}
      />
      <label className="tick">
        <input
          type="checkbox"
          checked={movesPlan}
          data-testid="ease-plan"
          onChange={(event) => setMovesPlan(event.currentTarget.checked)}
        />
        in plan as well as in height
      </label>
      <div className="deeds">
        <button
          type="button"
          title="Find the small change of the edge that takes most twist out of the sheet"
          disabled={isLooking}
          data-testid="ease-look"
          onClick={look}
        >
          <Feather aria-hidden />
          {isLooking ? "Easing…" : "Ease"}
        </button>
      </div>
      {found && found.project === project ? (
        <EasingFound
          easing={found.easing}
          onTake={({ side, nodes }) => {
            useDocument.getState().dispatch({ kind: "ease-edge", itemId: transition.id, side, nodes });
            setFound(undefined);
          }}
          onLeave={() => setFound(undefined)}
        />
      ) : null}
    </section>
  );
}

function EasingFound({
  easing,
  onTake,
  onLeave,
}: {
  readonly easing: Easing | undefined;
  readonly onTake: (easing: Easing) => void;
  readonly onLeave: () => void;
}) {
  const { showFine, unit } = useLengths();
  if (!easing) return <p className="pencil">It cannot be eased while the transition cannot be made.</p>;
  if (easing.movedMm === 0) return <p className="pencil">Within this band nothing takes twist out of it.</p>;
  const { before, after, movedMm } = easing;
  return (
    <div className="wing" data-testid="easing">
      <table className="figures">
        <thead>
          <tr>
            <th scope="col">
              <span className="visually-hidden">What</span>
            </th>
            <th scope="col">before</th>
            <th scope="col">after</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <td>Largest twist</td>
            <td>{degrees(before)}</td>
            <td data-testid="eased-twist">{degrees(after)}</td>
          </tr>
          <tr>
            <td>Outer fibre</td>
            <td>{percent(before)}</td>
            <td>{percent(after)}</td>
          </tr>
          <tr>
            <td>What to do</td>
            <td>{wordTwist(before)}</td>
            <td>{wordTwist(after)}</td>
          </tr>
        </tbody>
      </table>
      <p className="pencil">
        The farthest node moves by {showFine(movedMm)} {unit}.
      </p>
      <div className="deeds">
        <button type="button" className="primary" data-testid="ease-take" onClick={() => onTake(easing)}>
          <Check aria-hidden />
          Move the edge
        </button>
        <button type="button" className="plain" data-testid="ease-leave" onClick={onLeave}>
          <X aria-hidden />
          Leave it
        </button>
      </div>
    </div>
  );
}

const degrees = ({ maxTwistRad }: TwistJudgement): string => `${formatNumber(toDegrees(maxTwistRad), 2)}°`;
const percent = ({ pressStrain }: TwistJudgement): string => `${formatNumber(pressStrain * 100, 2)} %`;
