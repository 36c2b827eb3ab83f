import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { projectJsonSchema, SCHEMA_FILE } from "./project-json-schema.ts";

it("the JSON Schema in the repository is that of the schema which reads files", () => {
  expect(JSON.parse(readFileSync(SCHEMA_FILE, "utf8"))).toEqual(
    JSON.parse(JSON.stringify(projectJsonSchema())),
  );
});
