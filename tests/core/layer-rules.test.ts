import { describe, expect, it } from "vitest";
import { breachesOfLayers, breachesOfTopLevel, CORE_ORDER, type SourceFile } from "../layer-rules.ts";
import { readImports } from "../read-imports.ts";

const file = (path: string, text: string): SourceFile => ({ path, text });
const breachesOf = (...files: readonly SourceFile[]) => breachesOfLayers(files);

describe("the reader of imports", () => {
  it("finds every way of importing, with its line", () => {
    const text = [
      'import { a } from "./a.ts";',
      'import type { B } from "./b.ts";',
      "import {",
      "  c,",
      "} from '../c/index.ts';",
      'export { d } from "./d.ts";',
      'export * from "./e.ts";',
      'import "./style.css";',
      'const late = () => import("./late.ts");',
      'type Far = import("./far.ts").Far;',
      'const worker = new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });',
    ].join("\n");
    expect(readImports(text)).toEqual([
      { specifier: "./a.ts", line: 1 },
      { specifier: "./b.ts", line: 2 },
      { specifier: "../c/index.ts", line: 5 },
      { specifier: "./d.ts", line: 6 },
      { specifier: "./e.ts", line: 7 },
      { specifier: "./style.css", line: 8 },
      { specifier: "./late.ts", line: 9 },
      { specifier: "./far.ts", line: 10 },
      { specifier: "./worker.ts", line: 11 },
    ]);
  });

  it("is not misled by comments, strings and names", () => {
    const text = [
      '// import { a } from "./a.ts";',
      '/* import "./b.ts";\n export { c } from "./c.ts"; */',
      'const address = "https://example.org"; // from "./d.ts"',
      'export const from = "./e.ts";',
      'export const important = ["./f.ts"];',
      'const page = `\nimport "./g.ts";\n`;',
    ].join("\n");
    expect(readImports(text)).toEqual([]);
  });

  it("reports an import whose file is not written out", () => {
    expect(readImports("const x = await import(name);")).toEqual([{ specifier: "", line: 1 }]);
  });
});

describe("the layer check", () => {
  it("lets the allowed arrows pass", () => {
    const breaches = breachesOf(
      file("core/foundation/index.ts", 'export { at } from "./assert.ts";'),
      file("core/foundation/assert.ts", ""),
      file(
        "core/curves/index.ts",
        'import { at } from "../foundation/index.ts"; import * as v from "valibot";',
      ),
      file("core/design.ts", 'import type { Curve } from "./curves/index.ts";'),
      file(
        "core/cli.ts",
        'import { readFileSync } from "node:fs"; import { designTray } from "./design.ts";',
      ),
      file(
        "web/app.tsx",
        'import { designTray } from "../core/design.ts"; import { at } from "../core/foundation/index.ts"; import "react"; import "./x.css";',
      ),
    );
    expect(breaches).toEqual([]);
  });

  it.each(CORE_ORDER.slice(0, -2).map((layer, index) => [layer, CORE_ORDER[index + 1] ?? ""]))(
    "catches an arrow from %s to %s, against the order",
    (earlier, later) => {
      const target = later.endsWith(".ts") ? `../${later}` : `../${later}/index.ts`;
      const breaches = breachesOf(file(`core/${earlier}/index.ts`, `import { x } from "${target}";`));
      expect(
        breaches.some((breach) => breach.includes(`imports ${later}, which stands after ${earlier}`)),
      ).toBe(true);
    },
  );

  it("catches an arrow from design.ts to cli.ts", () => {
    expect(breachesOf(file("core/design.ts", 'import "./cli.ts";'))[0]).toContain(
      "which stands after design.ts",
    );
  });

  it("catches a look past the face of another folder, from core and from web", () => {
    const text = 'import { unit2 } from "../foundation/vectors.ts";';
    expect(breachesOf(file("core/curves/a.ts", text))[0]).toContain("only core/foundation/index.ts is seen");
    const deep = 'import { unit2 } from "../core/foundation/vectors.ts";';
    expect(breachesOf(file("web/a.ts", deep))[0]).toContain("only core/foundation/index.ts is seen");
    expect(breachesOf(file("web/a.ts", 'import "../core/cli.ts";'))).toHaveLength(1);
  });

  it("catches a folder that stands in no layer", () => {
    expect(breachesOf(file("core/utils/a.ts", ""))[0]).toContain("lies in no layer");
  });

  it.each(["react", "react-konva", "konva", "zustand", "node:fs", "three/addons/a.js", "@scope/b"])(
    "catches %s in the core",
    (name) => {
      expect(breachesOf(file("core/book/a.ts", `import x from "${name}";`))[0]).toContain(
        `imports ${name.split("/a")[0]}`,
      );
    },
  );

  it("catches the core looking at the screen, and the screen looking at the tests", () => {
    expect(breachesOf(file("core/book/a.ts", 'import "../../web/app.ts";'))[0]).toContain(
      "imports web/app.ts",
    );
    expect(breachesOf(file("web/a.ts", 'import "../tests/layers.ts";'))[0]).toContain(
      "imports tests/layers.ts",
    );
  });

  it("catches an import whose file is not written out", () => {
    expect(breachesOf(file("web/a.ts", "await import(name);"))[0]).toContain("not written out");
  });

  it("catches a cycle of three files, also of types, and names it once", () => {
    const breaches = breachesOf(
      file("web/a.ts", 'import { b } from "./b.ts";'),
      file("web/b.ts", 'import type { C } from "./c.ts";'),
      file("web/c.ts", 'export { a } from "./a.ts";'),
      file("web/d.ts", 'import { a } from "./a.ts";'),
    );
    expect(breaches).toEqual(["import cycle: web/a.ts → web/b.ts → web/c.ts → web/a.ts"]);
  });

  it("catches what has no place at the top level", () => {
    const names = ["core", "web", "tests", "README.md", ".ci", "node_modules", "dist", "src", "notes.md"];
    expect(breachesOfTopLevel(names).map((breach) => breach.split(" ")[0])).toEqual(["src", "notes.md"]);
  });
});
