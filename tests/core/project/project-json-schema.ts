import { toJsonSchema } from "@valibot/to-json-schema";
import { CURRENT_VERSION, ProjectSchema } from "../../../core/project/index.ts";

/** Where the JSON Schema of the project file is kept. */
export const SCHEMA_FILE = "core/project/project.schema.json";

/** The JSON Schema of a project file as it is read, made from the schema that reads it. */
export function projectJsonSchema(): object {
  const made = toJsonSchema(ProjectSchema, {
    typeMode: "input",
    errorMode: "ignore",
    // The only unions are typed numbers, odd ones spelt out.
    overrideSchema: ({ valibotSchema, jsonSchema }) =>
      valibotSchema.type === "union" ? { $ref: "#/$defs/typedNumber" } : jsonSchema,
  });
  return {
    title: `Traywright project, version ${CURRENT_VERSION}`,
    ...made,
    $defs: { typedNumber: { anyOf: [{ type: "number" }, { enum: ["NaN", "Infinity", "-Infinity"] }] } },
  };
}
