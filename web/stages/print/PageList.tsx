import type { PagesAhead } from "../../worker/index.ts";
import { PagePicture } from "./PagePicture.tsx";

/** Small pictures of all pages, in the order of printing. */
export function PageList({ ahead }: { readonly ahead: PagesAhead }) {
  return (
    <ol className="page-list" data-testid="page-list">
      {ahead.set.pages.map((page, index) => (
        <li key={`${index}/${page.name}`}>
          <PagePicture page={page} pens={ahead.pens} />
          <p>
            <span className="code">{index + 1}</span> {page.name}
          </p>
        </li>
      ))}
    </ol>
  );
}
