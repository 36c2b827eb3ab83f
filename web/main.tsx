import { createRoot } from "react-dom/client";
import { assert } from "../core/foundation/index.ts";
import { Page } from "./app/Page.tsx";
import { start } from "./app/start.ts";
import "./style/fonts.css";
import "./style/tokens.css";
import "./style/base.css";
import "./style/layout.css";
import "./style/stages.css";

const root = document.getElementById("root");
assert(root !== null, "the page has a root");
await start();
createRoot(root).render(<Page />);
