import type { Design } from "../../../core/design.ts";
import { formatAngle, formatMm } from "../../../core/foundation/index.ts";
import { type Joint, wordBevel } from "../../../core/joints/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { ScrollAcross } from "../../controls/index.ts";
import { HelpMark } from "../../help/index.ts";
import { useDocument } from "../../stores/index.ts";
import { wordItem } from "../../tools/index.ts";

interface JointTableProps {
  readonly part: Part;
  readonly design: Design;
}

/** The joints of a part: with what, how sharply it folds there, and how its own edge is cut. */
export function JointTable({ part, design }: JointTableProps) {
  const joints = design.joints.filter(({ partIds }) => partIds.includes(part.id));
  if (joints.length === 0) return null;
  return (
    <ScrollAcross label="Joints">
      <h3>
        <HelpMark term="joint">Joints</HelpMark>
      </h3>
      <table className="figures" data-testid="joint-table">
        <thead>
          <tr>
            <th scope="col">edge</th>
            <th scope="col">with</th>
            <th scope="col" className="figure">
              length, mm
            </th>
            <th scope="col" className="figure" title="Between the normals of the two; minus folds outward">
              <HelpMark term="fold">fold</HelpMark>
            </th>
            <th scope="col">cut</th>
            <th scope="col" className="figure" title="Off square, of this part's edge">
              <HelpMark term="bevel">bevel</HelpMark>
            </th>
            <th
              scope="col"
              className="figure"
              title="How far the middle of the foam ends before the drawn edge; minus is beyond it"
            >
              <HelpMark term="setBack">set-back</HelpMark>, mm
            </th>
          </tr>
        </thead>
        <tbody>
          {joints.map((joint) => (
            <JointRow key={joint.id} joint={joint} part={part} design={design} />
          ))}
        </tbody>
      </table>
    </ScrollAcross>
  );
}

function JointRow({ joint, part, design }: JointTableProps & { readonly joint: Joint }) {
  const own = joint.partIds[0] === part.id ? 0 : 1;
  const other = own === 0 ? 1 : 0;
  const edge = part.edges.find(({ edgeId }) => edgeId === joint.edgeIds[own]);
  const range = (values: readonly number[], word: (value: number) => string): string => {
    const words = [word(Math.min(...values)), word(Math.max(...values))];
    return words[0] === words[1] ? (words[0] ?? "") : words.join(" to ");
  };
  const { stations } = joint;
  const ends = [stations[0]?.bevelRad[own] ?? 0, stations.at(-1)?.bevelRad[own] ?? 0] as const;
  return (
    <tr>
      <td>{edge?.name ?? joint.edgeIds[own]}</td>
      <td>
        <span className="code">{joint.partIds[other]}</span>
      </td>
      <td className="figure">{formatMm(joint.lengthMm)}</td>
      <td className="figure">
        {range(
          stations.map(({ foldRad }) => foldRad),
          formatAngle,
        )}
      </td>
      <td>
        {joint.kind === "shared edge" ? (
          <CutSelect joint={joint} own={own} design={design} />
        ) : (
          <span>{joint.cut}</span>
        )}
      </td>
      <td className="figure wordy">{wordBevel(ends, part.kind)}</td>
      <td className="figure">
        {range(
          stations.map(({ setBackMm }) => setBackMm[own]),
          formatMm,
        )}
      </td>
    </tr>
  );
}

type Cut = Project["joints"]["cuts"][number];

/** How the joint is cut: as its fold asks for, or as the builder likes. */
function CutSelect({
  joint,
  own,
  design,
}: {
  readonly joint: Joint;
  readonly own: 0 | 1;
  readonly design: Design;
}) {
  const joints = useDocument((state) => state.project.joints);
  const edges = [0, 1].map((side) => itemEdge(design, joint, side === 0 ? 0 : 1));
  const [mine, theirs] = own === 0 ? edges : edges.toReversed();
  if (!mine || !theirs) return <span>{joint.cut}</span>;
  const isHere = ({ edge }: Cut) =>
    [mine, theirs].some(({ itemId, edgeId }) => edge.itemId === itemId && edge.edgeId === edgeId);
  const chosen = joints.cuts.find(isHere);
  const value = chosen ? [chosen.cut, chosen.throughItemId ?? ""].join(" ").trim() : "";
  const choose = (typed: string) => {
    const [cut, throughItemId] = typed.split(" ");
    const others = joints.cuts.filter((each) => !isHere(each));
    const added: readonly Cut[] = isCut(cut)
      ? [{ edge: mine, cut, ...(throughItemId ? { throughItemId } : {}) }]
      : [];
    useDocument
      .getState()
      .dispatch({ kind: "change-settings", changes: { joints: { ...joints, cuts: [...others, ...added] } } });
  };
  const through = (itemId: string) => `butt, ${wordItem(design.project, itemId)} through`;
  return (
    <select
      value={value}
      aria-label={`How the joint with ${joint.partIds[own === 0 ? 1 : 0]} is cut`}
      data-testid={`cut-${joint.id}`}
      onChange={(event) => choose(event.currentTarget.value)}
    >
      <option value="">{`as it asks: ${joint.cut}`}</option>
      <option value="square">square</option>
      <option value="mitre">mitre</option>
      <option value={`butt ${mine.itemId}`}>{through(mine.itemId)}</option>
      <option value={`butt ${theirs.itemId}`}>{through(theirs.itemId)}</option>
    </select>
  );
}

const isCut = (word: string | undefined): word is Cut["cut"] =>
  word === "square" || word === "mitre" || word === "butt";

/** The drawn edge of a joint on one side; that of an image is its original's. */
function itemEdge(design: Design, joint: Joint, side: 0 | 1): Cut["edge"] | undefined {
  const part = design.parts.find(({ id }) => id === joint.partIds[side]);
  return part && { itemId: part.itemId, edgeId: joint.edgeIds[side].replace(/\.left$/, "") };
}
