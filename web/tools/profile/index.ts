export { type ProfileState, profileTool } from "./profile-tool.ts";
