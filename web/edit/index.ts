export { ChoosingBox } from "./ChoosingBox.tsx";
export { SeveralPanel } from "./SeveralPanel.tsx";
export { SeveralSwitch } from "./SeveralSwitch.tsx";
