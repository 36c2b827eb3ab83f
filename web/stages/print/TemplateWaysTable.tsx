import type { TemplateCount } from "../../../core/book/index.ts";
import { TemplateWays } from "../../../core/project/index.ts";
import { useSettings } from "../settings/index.ts";
import { WAY_WORDS } from "./way-words.ts";

/** How each part is marked out, with the pages and the taping time of every way; a part can have a way of its own. */
export function TemplateWaysTable({ counts }: { readonly counts: readonly TemplateCount[] }) {
  const { project, change } = useSettings();
  const { paper } = project;
  if (counts.length === 0) return null;
  const choose = (partId: string, value: string) => {
    const others = (paper.templateWays ?? []).filter((own) => own.partId !== partId);
    const way = TemplateWays.find((one) => one === value);
    change({ paper: { ...paper, templateWays: way ? [...others, { partId, way }] : others } });
  };
  return (
    <details className="template-ways">
      <summary>How each part is marked out</summary>
      <table className="figures" data-testid="template-ways">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Name</th>
            <th scope="col">Marked out by</th>
            <th scope="col">Whole, pages</th>
            <th scope="col">Taping, min</th>
            <th scope="col">Curves and corners, pages</th>
            <th scope="col">Taping, min</th>
          </tr>
        </thead>
        <tbody>
          {counts.map((count) => (
            <tr key={count.partId}>
              <td className="code">{count.partId}</td>
              <td>{count.name}</td>
              <td>
                <select
                  aria-label={`${count.partId} is marked out by`}
                  value={count.isOwn ? count.way : ""}
                  onChange={(event) => choose(count.partId, event.currentTarget.value)}
                >
                  <option value="">as the tray</option>
                  {TemplateWays.map((way) => (
                    <option key={way} value={way}>
                      {WAY_WORDS[way]}
                    </option>
                  ))}
                </select>
              </td>
              <td>{count.fullPages}</td>
              <td>{count.fullMinutes.toFixed(0)}</td>
              <td>{count.curvesPages}</td>
              <td>{count.curvesMinutes.toFixed(0)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="note">
        Pages of a part by itself; on shared paper all of them together are fewer. Table only takes no page.
      </p>
    </details>
  );
}
