import { formatNumber } from "../../../core/foundation/index.ts";
import { type Foam, leastBendRatioOf } from "../../../core/project/index.ts";
import { NumberField } from "../../controls/index.ts";

interface BendTestFieldsProps {
  readonly foam: Foam;
  readonly thicknessMm: number;
  readonly onChange: (foam: Foam) => void;
}

/** A test on scrap in place of the foam's bend ratio. */
export function BendTestFields({ foam, thicknessMm, onChange }: BendTestFieldsProps) {
  const { bendTest, ...untested } = foam;
  if (!bendTest)
    return (
      <div className="field">
        <button
          type="button"
          data-testid="add-bend-test"
          onClick={() =>
            onChange({ ...foam, bendTest: { thicknessMm, radiusMm: foam.leastBendRatio * thicknessMm } })
          }
        >
          I have bent a scrap of it
        </button>
        <span className="note">
          Bend a scrap of this foam over rounder and rounder things until it cracks, and type the radius of
          the last that it went over whole. Wear goggles: it snaps.
        </span>
      </div>
    );
  const set = (changes: Partial<NonNullable<Foam["bendTest"]>>) =>
    onChange({ ...foam, bendTest: { ...bendTest, ...changes } });
  const setting = `materials.foams.${foam.id}.bendTest`;
  return (
    <>
      <NumberField
        label="The scrap was thick"
        unit="mm"
        value={bendTest.thicknessMm}
        setting={`${setting}.thicknessMm`}
        onChange={(scrapMm) => set({ thicknessMm: scrapMm })}
      />
      <NumberField
        label="It went whole over a radius of"
        unit="mm"
        value={bendTest.radiusMm}
        setting={`${setting}.radiusMm`}
        note={`In place of the figure above: ${formatNumber(leastBendRatioOf(foam), 1)} × t in the middle of the foam.`}
        onChange={(radiusMm) => set({ radiusMm })}
      />
      <button type="button" onClick={() => onChange(untested)}>
        Forget the test
      </button>
    </>
  );
}
