import {
  defaultTemplateWay,
  type PaperName,
  PaperNames,
  type TemplateWay,
  TemplateWays,
} from "../../../core/project/index.ts";
import { NumberField, Select } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";
import { WAY_WORDS } from "./way-words.ts";

const WORDS: Readonly<Record<PaperName, string>> = {
  A4: "A4, 210 × 297 mm",
  A3: "A3, 297 × 420 mm",
  Letter: "Letter, 8.5 × 11 in",
  Tabloid: "Tabloid, 11 × 17 in",
  A1: "A1, 594 × 841 mm",
  A0: "A0, 841 × 1189 mm",
  roll: "Roll of your own width",
};

const WAY_NOTES: Readonly<Record<TemplateWay, string>> = {
  full: "Every line from paper.",
  curves: "The fewest pages with every curve at true size; straight runs by straightedge or table.",
  table: "No page: everything from the marking-out tables of the build book.",
};

/** The paper that the templates go on, and what a test print says of the printer. */
export function PaperSettings() {
  const { project, change } = useSettings();
  const { paper } = project;
  const set = (changes: Partial<typeof paper>) => change({ paper: { ...paper, ...changes } });
  return (
    <>
      <SettingsGroup title="Paper for the templates">
        <Select
          label="Paper"
          value={paper.size}
          setting="paper.size"
          testId="paper-size"
          options={PaperNames.map((value) => ({ value, word: WORDS[value] }))}
          onChange={(value) => {
            const size = PaperNames.find((name) => name === value);
            if (size) set({ size });
          }}
        />
        {paper.size === "roll" ? (
          <NumberField
            label="Width of the roll"
            unit="mm"
            value={paper.rollWidthMm}
            setting="paper.rollWidthMm"
            onChange={(rollWidthMm) => set({ rollWidthMm })}
          />
        ) : null}
        <NumberField
          label="Margin the printer needs"
          unit="mm"
          value={paper.marginMm}
          setting="paper.marginMm"
          onChange={(marginMm) => set({ marginMm })}
        />
        <NumberField
          label="Overlap of neighbouring pages"
          unit="mm"
          value={paper.overlapMm}
          setting="paper.overlapMm"
          onChange={(overlapMm) => set({ overlapMm })}
        />
        <Select
          label="Parts are marked out by"
          value={defaultTemplateWay(project)}
          setting="paper.templateWay"
          testId="template-way"
          note={WAY_NOTES[defaultTemplateWay(project)]}
          options={TemplateWays.map((value) => ({ value, word: WAY_WORDS[value] }))}
          onChange={(value) => {
            const templateWay = TemplateWays.find((way) => way === value);
            if (templateWay) set({ templateWay });
          }}
        />
      </SettingsGroup>
      <SettingsGroup title="After a test print">
        <p className="note">
          Print one page at 100 %, measure the 200 mm bar across and down, and type what the rule says.
        </p>
        <BarField
          direction="across"
          correction={paper.correctionX}
          onChange={(correctionX) => set({ correctionX })}
        />
        <BarField
          direction="down"
          correction={paper.correctionY}
          onChange={(correctionY) => set({ correctionY })}
        />
      </SettingsGroup>
    </>
  );
}

const BAR_MM = 200;

interface BarFieldProps {
  readonly direction: "across" | "down";
  readonly correction: number;
  readonly onChange: (correction: number) => void;
}

/** The measured length of the printed bar; the correction is what makes it true. */
function BarField({ direction, correction, onChange }: BarFieldProps) {
  return (
    <NumberField
      label={`The bar ${direction} measures`}
      unit="mm"
      value={BAR_MM / correction}
      note={
        correction === 1
          ? ""
          : `Pages are drawn ${((correction - 1) * 100).toFixed(2)} % larger ${direction}.`
      }
      setting={direction === "across" ? "paper.correctionX" : "paper.correctionY"}
      onChange={(measuredMm) => onChange(BAR_MM / measuredMm)}
    />
  );
}
