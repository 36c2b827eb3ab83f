import type { Design } from "../../../core/design.ts";
import { soundShopping } from "../../../core/project/index.ts";
import { moneyWords, type ShoppingList, shoppingList } from "../../../core/shopping/index.ts";
import { FigureHeads, ScrollAcross } from "../../controls/index.ts";
import { useDesign, useDocument } from "../../stores/index.ts";
import { EmptyPlace } from "../settings/index.ts";
import { BuyRow } from "./BuyRow.tsx";
import { usePrices } from "./use-prices.ts";
import { useToBuy } from "./use-to-buy.ts";

/** What is to be bought, in the packs that it is sold in, less what is there already; and what it costs. */
export function BuyStage() {
  const design = useDesign((state) => state.design);
  return (
    <article
      className="pane"
      aria-label="Shopping list"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it must scroll by key.
      tabIndex={0}
    >
      {design === undefined ? null : design.parts.length === 0 ? (
        <EmptyPlace words="Nothing to buy yet. Draw a section; what it takes comes here." />
      ) : (
        <Buying design={design} />
      )}
    </article>
  );
}

function Buying({ design }: { readonly design: Design }) {
  const { toBuy, isOld } = useToBuy(design);
  const { shopping, laying, stock, materials } = useDocument((state) => state.project);
  const change = usePrices();
  // What is typed here shows at once; the rest of the design does not hang on it.
  const project = {
    ...design.project,
    laying,
    stock,
    materials,
    ...(shopping && { shopping: soundShopping(shopping, []) }),
  };
  const list = shoppingList({ ...design, project, cloth: toBuy?.cloth ?? [] }, toBuy?.paper);
  return (
    <section className="skin-face" aria-label="To buy" data-testid="to-buy" data-counted={!isOld}>
      <h3>To buy</h3>
      <p className="note">
        Needed for the tray as it is drawn, with what is lost in cups and offcuts. Sheets are those that are
        laid out, else the least by area; buy one to spare of each. Write what you have, how it is sold, and
        what a pack costs; packs that are not typed are those that are common.
      </p>
      <ScrollAcross label="Shopping list">
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">What</th>
              <FigureHeads
                words={[
                  "needed",
                  "in store",
                  "in a pack",
                  "packs",
                  "left",
                  `a pack, ${list.currency}`,
                  list.currency,
                ]}
              />
            </tr>
          </thead>
          <tbody>
            {list.lines.map((line) => (
              <BuyRow key={line.key} line={line} onChange={(changes) => change(line.key, changes)} />
            ))}
          </tbody>
        </table>
      </ScrollAcross>
      <p data-testid="to-buy-cost">{costWords(list)}</p>
      {isOld ? <p className="note">Counting cloth and paper…</p> : null}
    </section>
  );
}

/** What all packs with a price cost, and how many lines have none. */
function costWords({ cost, currency, unpricedKeys }: ShoppingList): string {
  const total = `All that has a price: ${moneyWords(cost, currency)}.`;
  const { length } = unpricedKeys;
  return length === 0 ? total : `${total} ${length} ${length === 1 ? "line has" : "lines have"} none yet.`;
}
