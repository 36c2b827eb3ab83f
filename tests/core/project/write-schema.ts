import { writeFileSync } from "node:fs";
import { projectJsonSchema, SCHEMA_FILE } from "./project-json-schema.ts";

/** Writes the JSON Schema of the project file anew: `npx tsx tests/core/project/write-schema.ts`. */
writeFileSync(SCHEMA_FILE, `${JSON.stringify(projectJsonSchema(), null, 2)}\n`);
