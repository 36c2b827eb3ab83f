import { cornerWords, edgeWords, filletWords, type SkinPlan } from "../../../core/skins/index.ts";

/** What is done at free edges, in inside corners and on outside ones. */
export function EdgesAndFillets({ skins }: { readonly skins: SkinPlan }) {
  return (
    <section className="skin-face" aria-label="Edges, corners and fillets" data-testid="skin-edges">
      <h3>Edges, corners and fillets</h3>
      <ul>
        {skins.edges.map((one) => (
          <li key={one.finish}>{edgeWords(one)}</li>
        ))}
        {filletWords(skins).map((words) => (
          <li key={words}>{words}</li>
        ))}
        {skins.faces.flatMap(({ face, corners }) =>
          corners.map((corner) => (
            <li
              key={`${face} ${corner.jointId}`}
            >{`${face[0]?.toUpperCase()}${face.slice(1)}. ${cornerWords(corner)}`}</li>
          )),
        )}
      </ul>
    </section>
  );
}
