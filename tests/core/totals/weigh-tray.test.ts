import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { readExample } from "../../read-example.ts";

const demo = readExample("hill-climb-floor");
const { weight, skins, totals, parts } = designTray(demo);

describe("what the tray weighs", () => {
  it("is its foam, its skins, and glue, fillets and metal", () => {
    const foam = weight.parts.reduce((sum, { foamKg }) => sum + foamKg, 0);
    const skin = weight.parts.reduce((sum, { skinKg }) => sum + skinKg.likely, 0);
    expect(weight.parts.map(({ partId }) => partId)).toEqual(parts.map(({ id }) => id));
    expect(foam).toBeCloseTo(totals.foamMassKg, 9);
    expect(skin).toBeCloseTo(
      skins.faces.reduce((sum, { massKg }) => sum + massKg, 0),
      6,
    );
    expect(weight.massKg.likely).toBeCloseTo(foam + skin + weight.otherKg, 9);
    const fillets = skins.fillets.reduce((sum, { massKg }) => sum + massKg, 0);
    expect(weight.otherKg).toBeCloseTo(totals.glueMassKg + totals.metalMassKg + fillets, 6);
  });

  it("is less with little resin and more with much; a weighed coupon brings both together", () => {
    const { low, likely, high } = weight.massKg;
    expect(low).toBeLessThan(likely);
    expect(high).toBeGreaterThan(likely);
    const coupon = {
      clothId: "glass-280",
      plies: 4,
      lengthMm: 300,
      widthMm: 300,
      dryKg: 0.1208,
      curedKg: 0.2216,
    };
    const near = designTray({ ...demo, laminate: { coupons: [{ on: "film", ...coupon }] } }).weight.massKg;
    expect(near.likely).toBeCloseTo(likely, 6);
    expect(near.high - near.low).toBeLessThan(0.7 * (high - low));
  });

  it("balances on the centre line, and every hand's part as its image does", () => {
    expect(weight.centre.y).toBeCloseTo(0, 2);
    for (const { partId, centre, massKg } of weight.parts.filter((one) => one.partId.endsWith("R"))) {
      const image = weight.parts.find((one) => one.partId === partId.replace(/R$/, "L"));
      expect(image?.centre.x).toBeCloseTo(centre.x, 1);
      expect(image?.centre.y).toBeCloseTo(-centre.y, 1);
      expect((image?.massKg.likely ?? 0) / massKg.likely).toBeCloseTo(1, 2);
    }
  });
});
