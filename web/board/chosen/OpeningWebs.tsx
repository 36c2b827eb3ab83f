import { useLengths } from "../../controls/index.ts";
import { useDesign, useDocument } from "../../stores/index.ts";

/** How much foam each part keeps beside an opening, at its narrowest, as last computed. */
export function OpeningWebs({ openingId }: { readonly openingId: string }) {
  const parts = useDesign((state) => state.design?.parts);
  const leastMm = useDocument((state) => state.project.openingSettings.webMm);
  const lengths = useLengths();
  const webs = (parts ?? []).flatMap(({ id, webs: own }) =>
    (own ?? []).filter((web) => web.openingId === openingId).map((web) => ({ partId: id, ...web })),
  );
  if (webs.length === 0) return <p className="pencil">It cuts nothing yet.</p>;
  return (
    <section className="nodes">
      <h3 className="caption">Foam left beside it</h3>
      <table className="figures" data-testid="opening-webs">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">up to</th>
            <th scope="col">{lengths.unit}</th>
          </tr>
        </thead>
        <tbody>
          {webs.map(({ partId, otherName, webMm }) => (
            <tr key={`${partId}/${otherName}`} data-level={webMm < leastMm ? "look" : undefined}>
              <th scope="row" className="code">
                {partId}
              </th>
              <td>{otherName}</td>
              <td>{lengths.show(webMm)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
