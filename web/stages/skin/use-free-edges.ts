import { useDesign } from "../../stores/index.ts";

/** An edge that can be chosen by name. */
export interface NamedEdge {
  readonly value: string;
  readonly word: string;
  readonly itemId: string;
  readonly edgeId: string;
}

/** The free edges of all parts, each once for both hands. */
export function useFreeEdges(): readonly NamedEdge[] {
  const parts = useDesign((state) => state.design?.parts) ?? [];
  return parts
    .filter(({ hand }) => hand !== "left")
    .flatMap(({ itemId, id, edges }) =>
      edges
        .filter(({ role, edgeId }) => role === "free" && !edgeId.endsWith(".left"))
        .map(({ edgeId, name }) => ({
          value: `${itemId} ${edgeId}`,
          word: `${id}, ${name}`,
          itemId,
          edgeId,
        })),
    );
}
