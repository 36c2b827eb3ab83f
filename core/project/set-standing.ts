import type { Standing } from "./command-types.ts";
import { editItem, editOpening, editProfile, replaceOne } from "./edit-lines.ts";
import type { Project, ThingRef } from "./schema.ts";

/** What stands on a thing that is locked or hidden; a thing that is neither has neither field. */
interface Stands {
  readonly locked?: true;
  readonly hidden?: true;
}

/** The document with things locked, unlocked, hidden or shown; the same document where all of them are already. */
export const setStanding = (project: Project, things: readonly ThingRef[], standing: Standing): Project =>
  things.reduce((changed, thing) => setOne(changed, thing, standing), project);

function setOne(project: Project, thing: ThingRef, standing: Standing): Project {
  switch (thing.of) {
    case "item":
      return editItem(project, thing.itemId, (item) => standingAs(item, standing));
    case "opening":
      return editOpening(project, thing.openingId, (opening) => standingAs(opening, standing));
    case "profile":
      return editProfile(project, thing.profileId, (profile) => standingAs(profile, standing));
    case "underlay": {
      const underlays = replaceOne(
        project.underlays,
        ({ id }) => id === thing.underlayId,
        (underlay) => standingAs(underlay, standing),
      );
      return underlays === project.underlays ? project : { ...project, underlays };
    }
  }
}

function standingAs<Thing extends Stands>(thing: Thing, standing: Standing): Thing {
  switch (standing) {
    case "locked":
      return thing.locked ? thing : { ...thing, locked: true };
    case "hidden":
      return thing.hidden ? thing : { ...thing, hidden: true };
    case "unlocked":
      return thing.locked ? without(thing, "locked") : thing;
    case "shown":
      return thing.hidden ? without(thing, "hidden") : thing;
  }
}

function without<Thing extends Stands>(thing: Thing, field: keyof Stands): Thing {
  const { [field]: _taken, ...rest } = thing;
  // The field is optional on every thing that can be locked and hidden.
  return rest as Thing;
}
