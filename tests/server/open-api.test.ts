import { Validator } from "@seriousme/openapi-schema-validator";
import { describe, expect, it } from "vitest";
import { apiDocument, problemsOf } from "../../app/server/open-api.ts";
import { PROBLEMS } from "../../app/server/problem.ts";
import { ROUTES } from "../../app/server/routes/index.ts";

const document = apiDocument(ROUTES, "1.0.0");

describe("the document of the routes", () => {
  // Source: the JSON Schema of OpenAPI 3.1 of the OpenAPI Initiative, as @seriousme/openapi-schema-validator carries it.
  it("follows OpenAPI 3.1", async () => {
    const validator = new Validator();
    const { valid, errors } = await validator.validate(structuredClone(document));
    expect(errors).toBeUndefined();
    expect(valid).toBe(true);
    expect(validator.version).toBe("3.1");
  });

  it("refers to nothing that is not there", () => {
    const { components } = document as { components: { schemas: object } };
    const refs = [...JSON.stringify(document).matchAll(/"\$ref":"([^"]+)"/g)].map(([, ref]) => ref ?? "");
    expect(refs.length).toBeGreaterThan(20);
    for (const ref of refs) {
      expect(Object.keys(components.schemas), ref).toContain(ref.replace("#/components/schemas/", ""));
    }
  });

  it("says of each operation a name of its own, and every parameter of its path", () => {
    const { paths } = document as {
      paths: Record<
        string,
        Record<string, { operationId: string; parameters?: { name: string; in: string }[] }>
      >;
    };
    const operations = Object.entries(paths).flatMap(([path, methods]) =>
      Object.values(methods).map((operation) => ({ path, ...operation })),
    );
    expect(operations).toHaveLength(ROUTES.length);
    expect(new Set(operations.map(({ operationId }) => operationId)).size).toBe(ROUTES.length);
    for (const { path, parameters = [] } of operations) {
      const named = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);
      expect(parameters.filter((p) => p.in === "path").map((p) => p.name)).toEqual(named);
    }
  });

  it("names no problem that no route has, and every status of every problem", () => {
    const told = new Set(ROUTES.flatMap(problemsOf));
    expect([...told].sort()).toEqual(Object.keys(PROBLEMS).sort());
  });
});
