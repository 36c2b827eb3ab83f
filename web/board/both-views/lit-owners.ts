import type { Project } from "../../../core/project/index.ts";

/** Whose lines belong to the same surface: a section and its profile, a profile and all its sections. */
export function litOwners(project: Project, owner: string): readonly string[] {
  const sections = project.items.flatMap((item) =>
    item.kind === "section" ? [{ section: `item/${item.id}`, profile: `profile/${item.profileId}` }] : [],
  );
  const others = sections.flatMap(({ section, profile }) =>
    section === owner ? [profile] : profile === owner ? [section] : [],
  );
  return [owner, ...others];
}
