import { sayNode } from "../../../core/foundation/index.ts";
import { type Item, type Plate, planLineOf, type Transition } from "../../../core/project/index.ts";

/** A node that a stretch may run from or to, and how it is said. */
export interface EdgeEnd {
  readonly nodeId: string;
  readonly word: string;
}

/** The nodes of an item that the edge of a transition may run between, in the order of its outline; none of a fence. */
export function endsOfEdges(item: Item): readonly EdgeEnd[] {
  switch (item.kind) {
    case "fence":
      return [];
    case "section":
      return outlineEnds(item);
    case "plate":
      return [...outlineEnds(item), ...wingEnds(item)];
    case "transition":
      return transitionEnds(item);
  }
}

const outlineEnds = (item: Item): readonly EdgeEnd[] =>
  planLineOf(item)
    .elements.flatMap(({ kind, id }) => (kind === "follow" ? [`${id}-start`, `${id}-end`] : [id]))
    .map((nodeId) => ({ nodeId, word: sayNode(nodeId) }));

const wingEnds = ({ wings }: Plate): readonly EdgeEnd[] =>
  wings.flatMap(({ id }, index) => [
    { nodeId: `${id}-start`, word: `the start of wing ${index + 1}` },
    { nodeId: `${id}-end`, word: `the end of wing ${index + 1}` },
  ]);

/** The corners of its outline, and between them the inner nodes of its free edges. */
function transitionEnds(item: Transition): readonly EdgeEnd[] {
  const along = (side: "first" | "second"): readonly EdgeEnd[] => {
    const edge = item[side];
    const inner = edge.kind === "free" ? edge.nodes.slice(1, -1) : [];
    return [
      { nodeId: `${side}-start`, word: `the start of its ${side} edge` },
      ...inner.map(({ id }) => ({ nodeId: id, word: sayNode(id) })),
      { nodeId: `${side}-end`, word: `the end of its ${side} edge` },
    ];
  };
  return [...along("first"), ...along("second")];
}
