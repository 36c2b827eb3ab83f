import { Plus, Trash2 } from "lucide-react";
import { formatNumber } from "../../../core/foundation/index.ts";
import { laminateOf, type Project } from "../../../core/project/index.ts";
import { NumberField, Select } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

type Coupon = NonNullable<NonNullable<Project["laminate"]>["coupons"]>[number];

const SIZES = [
  { key: "lengthMm", label: "Long", unit: "mm", per: 1, decimals: 0 },
  { key: "widthMm", label: "Wide", unit: "mm", per: 1, decimals: 0 },
  { key: "plies", label: "Plies", unit: "", per: 1, decimals: 0 },
  { key: "dryKg", label: "Weighed dry", unit: "g", per: 1000, decimals: 1 },
  { key: "curedKg", label: "Weighed cured", unit: "g", per: 1000, decimals: 1 },
] as const;

/** Weighed coupons: what they show takes the place of the usual figures everywhere. */
export function CouponFields() {
  const { project, change } = useSettings();
  const coupons = project.laminate?.coupons ?? [];
  const { weighed } = laminateOf(project);
  const set = (changed: readonly Coupon[]) =>
    change({ laminate: { ...project.laminate, coupons: [...changed] } });
  const shown = [
    ...(weighed.fibreMassShare === undefined
      ? []
      : [`${formatNumber(100 * weighed.fibreMassShare, 0)} % fibre by mass`]),
    ...(weighed.preWetKgPerM2 === undefined
      ? []
      : [`bare foam drinks ${formatNumber(1000 * weighed.preWetKgPerM2, 0)} g/m²`]),
  ];
  return (
    <SettingsGroup title="Weighed coupons">
      <p className="note">
        {shown.length > 0
          ? `Weighed, and used in place of what is typed above: ${shown.join("; ")}.`
          : "Lay a square of your own cloth, on film for its share of fibre and on foam for what that drinks. Weigh it dry and, with the peel ply off, cured: your figures are better than any usual ones."}
      </p>
      {coupons.map((coupon, index) => {
        const replace = (changes: Partial<Coupon>) => set(coupons.with(index, { ...coupon, ...changes }));
        const setting = `laminate.coupons.${index}`;
        return (
          <fieldset key={index} className="ply" aria-label={`Coupon ${index + 1}`} data-setting={setting}>
            <Select
              label={`Coupon ${index + 1}, laid on`}
              value={coupon.on}
              setting={setting}
              options={[
                { value: "film", word: "film or glass: gives the share of fibre" },
                { value: "foam", word: "bare foam: gives what it drinks" },
              ]}
              onChange={(on) => replace({ on: on === "foam" ? "foam" : "film" })}
            />
            <Select
              label="Cloth"
              value={coupon.clothId}
              options={project.materials.cloths.map(({ id, name }) => ({ value: id, word: name }))}
              onChange={(clothId) => replace({ clothId })}
            />
            {SIZES.map(({ key, label, unit, per, decimals }) => (
              <NumberField
                key={key}
                label={label}
                unit={unit}
                decimals={decimals}
                value={coupon[key] * per}
                setting={`${setting}.${key}`}
                onChange={(value) => replace({ [key]: value / per })}
              />
            ))}
            <button type="button" className="plain" onClick={() => set(coupons.toSpliced(index, 1))}>
              <Trash2 aria-hidden /> {`Take coupon ${index + 1} away`}
            </button>
          </fieldset>
        );
      })}
      <button
        type="button"
        data-testid="add-coupon"
        onClick={() =>
          set([
            ...coupons,
            {
              on: "film",
              clothId: project.materials.cloths[0]?.id ?? "",
              plies: 4,
              lengthMm: 300,
              widthMm: 300,
              dryKg: 0.1,
              curedKg: 0.2,
            },
          ])
        }
      >
        <Plus aria-hidden /> Add a weighed coupon
      </button>
    </SettingsGroup>
  );
}
