import { describe, expect, it } from "vitest";
import { fibreMassShare, laminateKgPerM3 } from "../../core/laminate/index.ts";
import { centreOf, centreOfLoops } from "../../core/totals/index.ts";

const flat = ({ u, v }: { readonly u: number; readonly v: number }) => ({ x: u, y: v, z: 0 });

/** Panel weights and centres of mass worked by hand (arithmetic and closed form; the laminate's density after L10). */
describe("masses and centres", () => {
  it("L16: 10 mm of foam at 80 kg/m³ between skins of 0.6 mm at 35 % fibre weigh 2.7722 kg/m²", () => {
    const mix = { fibreKgPerM3: 2560, resinKgPerM3: 1150, fibreMassShare: fibreMassShare(0.35, 2560, 1150) };
    expect(0.01 * 80 + 2 * 0.0006 * laminateKgPerM3(mix)).toBeCloseTo(2.7722, 9);
  });

  it("L17: a notched sheet with an aluminium plate and six mounts weighs 9.282 kg and balances at 956.109, 580.220 mm", () => {
    const outline = [
      { u: 0, v: 0 },
      { u: 2000, v: 0 },
      { u: 2000, v: 900 },
      { u: 1600, v: 900 },
      { u: 1600, v: 1200 },
      { u: 0, v: 1200 },
    ];
    const sheet = centreOfLoops([outline], flat);
    const mounts = [200, 1000, 1800].flatMap((x) =>
      [150, 1050].map((y) => ({ massKg: 0.12, centre: { x, y, z: 0 } })),
    );
    const { massKg, centre } = centreOf([
      { massKg: (sheet.areaMm2 / 1e6) * 3.4, centre: sheet.centre },
      { massKg: 0.5 * 0.3 * 0.002 * 2700, centre: { x: 900, y: 600, z: 0 } },
      ...mounts,
    ]);
    expect(massKg).toBeCloseTo(9.282, 8);
    expect(centre.x / 1000).toBeCloseTo(0.956108597, 8);
    expect(centre.y / 1000).toBeCloseTo(0.58021978, 8);
  });

  it("L18: a sheet bent over 30° to a radius of 1 m is 523.599 mm long, its centre 988.616 mm from the arc's", () => {
    const radiusMm = 1000;
    const lengthMm = (radiusMm * Math.PI) / 6;
    const { areaMm2, centre } = centreOfLoops(
      [
        [
          { u: 0, v: 0 },
          { u: lengthMm, v: 0 },
          { u: lengthMm, v: 300 },
          { u: 0, v: 300 },
        ],
      ],
      ({ u, v }) => {
        const angle = u / radiusMm - Math.PI / 12;
        return { x: radiusMm * Math.sin(angle), y: v, z: radiusMm * Math.cos(angle) };
      },
    );
    expect(areaMm2 / 300 / 1000).toBeCloseTo(0.523598776, 9);
    expect(centre.z / 1000).toBeCloseTo(0.988615929, 9);
    expect(centre.x).toBeCloseTo(0, 9);
    expect(centre.y).toBeCloseTo(150, 9);
  });
});
