import type { ComparisonRow } from "../../core/project/index.ts";

interface ComparisonTableProps {
  readonly title: string;
  readonly rows: readonly ComparisonRow[];
  readonly beforeName: string;
  readonly afterName: string;
  /** Said in place of the table where nothing differs. */
  readonly same: string;
  readonly testId: string;
}

/** Differences of one sort: what, how it was, how it is, and by how much. */
export function ComparisonTable({ title, rows, beforeName, afterName, same, testId }: ComparisonTableProps) {
  return (
    <section data-testid={testId}>
      <h3 className="caption">{title}</h3>
      {rows.length === 0 ? (
        <p className="pencil">{same}</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls inside itself is scrolled by keys
        <div className="scroll-x" tabIndex={0} role="group" aria-label={title}>
          <table className="figures">
            <thead>
              <tr>
                <th scope="col">What</th>
                <th scope="col">{beforeName}</th>
                <th scope="col">{afterName}</th>
                <th scope="col">Difference</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ key, what, from, to, by }) => (
                <tr key={key}>
                  <th scope="row">{what}</th>
                  <td>{from}</td>
                  <td>{to}</td>
                  <td>{by}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}
