import type { Problem } from "../foundation/index.ts";
import { LARGEST_COORDINATE_MM } from "../foundation/index.ts";
import { soundBending } from "./check-bending.ts";
import { soundMaking } from "./check-making.ts";
import { CLOSER_SPARE_MM, emptyProject } from "./defaults.ts";
import { soundGluing } from "./gluing.ts";
import { soundLaminate } from "./laminate-settings.ts";
import { soundAsBuilt, soundLie } from "./lie-settings.ts";
import { isWithin, type Label, RANGES, type Range } from "./limits.ts";
import type { Project, RibPlaces } from "./schema.ts";
import { soundShopping } from "./shopping.ts";
import { soundWorkingTime } from "./working-time.ts";

/** A sound value in place of a typed one, and what was wrong with the typed one. */
export interface Checked<T> {
  readonly sound: T;
  readonly problems: readonly Problem[];
}

const DEFAULTS = emptyProject({ id: "defaults", title: "", issuedOn: "2000-01-01" });

/**
 * The settings of a project with every number that is out of its range, and every name of a material that is
 * not there, replaced by the default, and a problem for each. Materials must have been checked before.
 */
export function checkSettings(project: Project): Checked<Project> {
  const problems: Problem[] = [];
  const number = numberInto(problems);
  const name = nameInto(problems);
  const { core, skins, cutting, marking, jig, glue, joints, openingSettings, paper, materials } = project;
  const sound: Project = {
    ...project,
    core: {
      foamId: name(
        core.foamId,
        { ids: materials.foams, setting: "core.foamId", of: "the tray", field: "foam" },
        DEFAULTS.core.foamId,
      ),
      thicknessMm: number(
        core.thicknessMm,
        ["core.thicknessMm", "Thickness", "the foam"],
        RANGES.thicknessMm,
        DEFAULTS.core.thicknessMm,
      ),
    },
    skins: {
      lowerMm: number(
        skins.lowerMm,
        ["skins.lowerMm", "Thickness", "the lower skin"],
        RANGES.skinMm,
        DEFAULTS.skins.lowerMm,
      ),
      upperMm: number(
        skins.upperMm,
        ["skins.upperMm", "Thickness", "the upper skin"],
        RANGES.skinMm,
        DEFAULTS.skins.upperMm,
      ),
    },
    cutting: {
      ...cutting,
      kerfMm: number(
        cutting.kerfMm,
        ["cutting.kerfMm", "Kerf", "the blade"],
        RANGES.kerfMm,
        DEFAULTS.cutting.kerfMm,
      ),
      trimMm: number(
        cutting.trimMm,
        ["cutting.trimMm", "Trim allowance", "free edges"],
        RANGES.trimMm,
        DEFAULTS.cutting.trimMm,
      ),
      stockEdgeMm: number(
        cutting.stockEdgeMm,
        ["cutting.stockEdgeMm", "Edge loss", "the stock"],
        RANGES.stockEdgeMm,
        DEFAULTS.cutting.stockEdgeMm,
      ),
      seamStaggerMm: number(
        cutting.seamStaggerMm,
        ["cutting.seamStaggerMm", "Stagger", "cross seams"],
        RANGES.staggerMm,
        DEFAULTS.cutting.seamStaggerMm,
      ),
      ...(cutting.scarfRatio !== undefined && {
        scarfRatio: number(
          cutting.scarfRatio,
          ["cutting.scarfRatio", "Scarf", "the splices"],
          RANGES.scarfRatio,
          0,
        ),
      }),
      ...(cutting.closerSpareMm !== undefined && {
        closerSpareMm: number(
          cutting.closerSpareMm,
          ["cutting.closerSpareMm", "Spare", "closers"],
          RANGES.closerSpareMm,
          CLOSER_SPARE_MM,
        ),
      }),
    },
    ...(project.laminate && { laminate: soundLaminate(project.laminate, number) }),
    bending: soundBending(project.bending, number, DEFAULTS.bending),
    laying: {
      ...project.laying,
      clearanceMm: number(
        project.laying.clearanceMm,
        ["laying.clearanceMm", "Clearance", "pieces on stock"],
        RANGES.clearanceMm,
        DEFAULTS.laying.clearanceMm,
      ),
    },
    marking: {
      intervalMm: number(
        marking.intervalMm,
        ["marking.intervalMm", "Interval", "the marking-out stations"],
        RANGES.intervalMm,
        DEFAULTS.marking.intervalMm,
      ),
      toleranceMm: number(
        marking.toleranceMm,
        ["marking.toleranceMm", "Tolerance", "the marking out"],
        RANGES.markingToleranceMm,
        DEFAULTS.marking.toleranceMm,
      ),
    },
    jig: {
      ...jig,
      boardId: name(
        jig.boardId,
        { ids: materials.boards, setting: "jig.boardId", of: "the jig", field: "board" },
        DEFAULTS.jig.boardId,
      ),
      across: checkRibPlaces(jig.across, "jig.across", "the ribs across", problems),
      along: checkRibPlaces(jig.along, "jig.along", "the ribs along", problems),
      leastHeightMm: number(
        jig.leastHeightMm,
        ["jig.leastHeightMm", "Least height", "the ribs"],
        RANGES.ribHeightMm,
        DEFAULTS.jig.leastHeightMm,
      ),
      proudLimitMm: number(
        jig.proudLimitMm,
        ["jig.proudLimitMm", "Proud limit", "the ribs"],
        RANGES.proudMm,
        DEFAULTS.jig.proudLimitMm,
      ),
      ...soundMaking(jig.making, number, problems),
      ...(jig.lie && { lie: soundLie(jig.lie, number) }),
    },
    ...(project.asBuilt && { asBuilt: soundAsBuilt(project.asBuilt, problems) }),
    glue: {
      glueId: name(
        glue.glueId,
        { ids: materials.glues, setting: "glue.glueId", of: "the tray", field: "glue" },
        DEFAULTS.glue.glueId,
      ),
      gapMm: number(
        glue.gapMm,
        ["glue.gapMm", "Gap", "the glue line"],
        RANGES.glueGapMm,
        DEFAULTS.glue.gapMm,
      ),
      pinSpacingMm: number(
        glue.pinSpacingMm,
        ["glue.pinSpacingMm", "Spacing", "the pins"],
        RANGES.pinSpacingMm,
        DEFAULTS.glue.pinSpacingMm,
      ),
      pinSpacingCurvedMm: number(
        glue.pinSpacingCurvedMm,
        ["glue.pinSpacingCurvedMm", "Spacing", "the pins on curves"],
        RANGES.pinSpacingMm,
        DEFAULTS.glue.pinSpacingCurvedMm,
      ),
      ...soundGluing(glue, number),
    },
    ...(project.shopping && { shopping: soundShopping(project.shopping, problems) }),
    ...(project.schedule && { schedule: soundWorkingTime(project.schedule, problems) }),
    joints: {
      ...joints,
      toleranceMm: number(
        joints.toleranceMm,
        ["joints.toleranceMm", "Tolerance", "edges that meet"],
        RANGES.meetingMm,
        DEFAULTS.joints.toleranceMm,
      ),
    },
    openingSettings: {
      webMm: number(
        openingSettings.webMm,
        ["openingSettings.webMm", "Least web", "openings"],
        RANGES.webMm,
        DEFAULTS.openingSettings.webMm,
      ),
    },
    paper: {
      ...paper,
      rollWidthMm: number(
        paper.rollWidthMm,
        ["paper.rollWidthMm", "Width", "the paper roll"],
        RANGES.rollWidthMm,
        DEFAULTS.paper.rollWidthMm,
      ),
      marginMm: number(
        paper.marginMm,
        ["paper.marginMm", "Margin", "the paper"],
        RANGES.marginMm,
        DEFAULTS.paper.marginMm,
      ),
      overlapMm: number(
        paper.overlapMm,
        ["paper.overlapMm", "Overlap", "the pages"],
        RANGES.overlapMm,
        DEFAULTS.paper.overlapMm,
      ),
      correctionX: number(
        paper.correctionX,
        ["paper.correctionX", "Correction across", "the print"],
        RANGES.printCorrection,
        DEFAULTS.paper.correctionX,
      ),
      correctionY: number(
        paper.correctionY,
        ["paper.correctionY", "Correction down", "the print"],
        RANGES.printCorrection,
        DEFAULTS.paper.correctionY,
      ),
    },
  };
  return { sound, problems };
}

const numberInto =
  (problems: Problem[]) =>
  (value: number, [setting, field, of]: Label, range: Range, fallback: number): number => {
    if (isWithin(value, range)) return value;
    problems.push({
      kind: "number-out-of-range",
      place: { setting },
      name: of,
      field,
      value,
      ...range,
      used: fallback,
    });
    return fallback;
  };

interface NameLabel {
  readonly ids: readonly { readonly id: string }[];
  readonly setting: string;
  readonly of: string;
  readonly field: string;
}

const nameInto =
  (problems: Problem[]) =>
  (id: string, label: NameLabel, fallback: string): string => {
    if (label.ids.some((known) => known.id === id)) return id;
    problems.push({
      kind: "unknown-reference",
      place: { setting: label.setting },
      name: label.of,
      field: label.field,
      missingId: id,
    });
    return label.ids.some((known) => known.id === fallback) ? fallback : (label.ids[0]?.id ?? fallback);
  };

function checkRibPlaces(places: RibPlaces, setting: string, of: string, problems: Problem[]): RibPlaces {
  if (places.kind === "none" || places.kind === "automatic") return places;
  if (places.kind === "spacing") {
    const label: Label = [`${setting}.spacingMm`, "Spacing", of];
    return {
      kind: "spacing",
      spacingMm: numberInto(problems)(places.spacingMm, label, RANGES.ribSpacingMm, 300),
    };
  }
  const range = { least: -LARGEST_COORDINATE_MM, most: LARGEST_COORDINATE_MM };
  const isSound = (value: number, index: number): boolean => {
    if (isWithin(value, range)) return true;
    problems.push({
      kind: "number-out-of-range",
      place: { setting: `${setting}.atMm` },
      name: of,
      field: `Position ${index + 1}`,
      value,
      ...range,
    });
    return false;
  };
  return { kind: "typed", atMm: places.atMm.filter(isSound) };
}
