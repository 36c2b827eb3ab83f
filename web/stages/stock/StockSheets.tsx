import { Plus, Trash2 } from "lucide-react";
import { formatNumber, THIN_SPACE } from "../../../core/foundation/index.ts";
import type { Stock } from "../../../core/project/index.ts";
import { Choice, NumberField, Select } from "../../controls/index.ts";
import { useDesign } from "../../stores/index.ts";
import { OwnedFields, useSettings } from "../settings/index.ts";

/** The foam sheets that can be had, how many are needed at least, and what comes from each. */
export function StockSheets() {
  const { project, change } = useSettings();
  const { stock } = project;
  const replace = (changed: Stock) =>
    change({ stock: stock.map((each) => (each.id === changed.id ? changed : each)) });
  const add = () => {
    const last = stock.at(-1);
    const { foamId, thicknessMm } = project.core;
    const id = freeId(stock);
    change({
      stock: [
        ...stock,
        { id, foamId, thicknessMm, lengthMm: last?.lengthMm ?? 1250, widthMm: last?.widthMm ?? 600 },
      ],
    });
  };
  return (
    <section aria-label="Sheets in store">
      <h3 className="caption">Sheets in store</h3>
      <ul className="stock-sheets">
        {stock.map((sheet, index) => (
          <li key={sheet.id} className="settings-group">
            <StockFields sheet={sheet} number={index + 1} onChange={replace} />
            <StockUse stockId={sheet.id} />
            <button
              type="button"
              className="plain"
              onClick={() => change({ stock: stock.filter(({ id }) => id !== sheet.id) })}
            >
              <Trash2 aria-hidden /> Delete this sheet
            </button>
          </li>
        ))}
        <li>
          <button type="button" data-testid="add-stock" onClick={add}>
            <Plus aria-hidden /> Add a sheet
          </button>
        </li>
      </ul>
    </section>
  );
}

interface StockFieldsProps {
  readonly sheet: Stock;
  readonly number: number;
  readonly onChange: (sheet: Stock) => void;
}

function StockFields({ sheet, number, onChange }: StockFieldsProps) {
  const { project } = useSettings();
  const setting = `stock.${sheet.id}`;
  return (
    <>
      <h4>{`Sheet ${number}`}</h4>
      <Select
        label="Foam"
        value={sheet.foamId}
        setting={`${setting}.foamId`}
        options={project.materials.foams.map(({ id, name }) => ({ value: id, word: name }))}
        onChange={(foamId) => onChange({ ...sheet, foamId })}
      />
      <NumberField
        label="Thickness"
        unit="mm"
        value={sheet.thicknessMm}
        setting={`${setting}.thicknessMm`}
        onChange={(thicknessMm) => onChange({ ...sheet, thicknessMm })}
      />
      <NumberField
        label="Length"
        unit="mm"
        value={sheet.lengthMm}
        note="A roll is a sheet as long as what is left on it."
        setting={`${setting}.lengthMm`}
        onChange={(lengthMm) => onChange({ ...sheet, lengthMm })}
      />
      <NumberField
        label="Width"
        unit="mm"
        value={sheet.widthMm}
        setting={`${setting}.widthMm`}
        onChange={(widthMm) => onChange({ ...sheet, widthMm })}
      />
      <OwnedFields thing={sheet} setting={setting} onChange={onChange} />
      {project.laying.rotation === "grain" ? (
        <Choice
          label="The grain runs"
          value={sheet.grain ?? "along"}
          testId={`stock-grain-${sheet.id}`}
          options={[
            { value: "along", word: "Along its length" },
            { value: "across", word: "Across" },
          ]}
          onChange={(grain) => onChange(grain === "across" ? { ...sheet, grain } : withoutGrain(sheet))}
        />
      ) : null}
    </>
  );
}

function withoutGrain({ grain: _, ...sheet }: Stock): Stock {
  return sheet;
}

function StockUse({ stockId }: { readonly stockId: string }) {
  const design = useDesign((state) => state.design);
  const total = design?.totals.stock.find((each) => each.stockId === stockId);
  const strips = design?.strips.filter((strip) => strip.stockId === stockId) ?? [];
  if (strips.length === 0) return <p className="pencil">Nothing is cut from it.</p>;
  return (
    <div className="stock-use">
      {total ? (
        <p>
          <b>{`At least ${total.sheetsAtLeast} ${total.sheetsAtLeast === 1 ? "sheet" : "sheets"}`}</b>
          {` for ${formatNumber(total.areaMm2 / 1e6, 2)}${THIN_SPACE}m²`}
        </p>
      ) : null}
      <p className="code strip-codes">{strips.map(({ id }) => id).join("  ")}</p>
    </div>
  );
}

function freeId(stock: readonly Stock[]): string {
  const taken = new Set(stock.map(({ id }) => id));
  let number = stock.length + 1;
  while (taken.has(`stock-${number}`)) number += 1;
  return `stock-${number}`;
}
