import type { TrayPicture } from "../drawings/index.ts";

/** One tray as it is kept on this device. */
export interface KeptWork {
  /** Names the place it is kept in, not the project: two copies of one file are two works. */
  readonly slot: string;
  readonly title: string;
  /** The project file's own text. */
  readonly text: string;
  readonly keptAtMs: number;
  /** Whether it is the builder's: changed, made or opened by them. An example that was only looked at is not. */
  readonly isOwn: boolean;
  /** Absent for works that were kept before pictures were. */
  readonly picture?: TrayPicture;
  /** When the builder deleted it; it can be put back until it is deleted for good. */
  readonly deletedAtMs?: number;
}
