import { describe, expect, it } from "vitest";
import { planWork, type Shapes, shapeTray, type Work } from "../../../core/design.ts";
import { newMemory } from "../../../core/foundation/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { newArrival, newDeparture } from "../../../web/worker/crossing.ts";
import { readExample } from "../../read-example.ts";

interface Small {
  readonly list: readonly { readonly id: string }[];
  readonly one: { readonly id: string };
  readonly perhaps?: string;
}

function newWay<Whole extends object>() {
  const depart = newDeparture<Whole>();
  const arrive = newArrival<Whole>();
  let bytes = 0;
  return {
    send: (whole: Whole): Whole => {
      const crossing = depart(whole);
      bytes = JSON.stringify(crossing).length;
      return arrive(structuredClone(crossing));
    },
    bytes: () => bytes,
  };
}

describe("what crosses from the worker to the page", () => {
  const a = { id: "a" };
  const b = { id: "b" };
  const c = { id: "c" };

  it("what stayed the same object is the same object there, whatever place it has moved to", () => {
    const way = newWay<Small>();
    const first = way.send({ list: [a, b], one: a });
    const second = way.send({ list: [c, b, a], one: a });
    expect(second).toEqual({ list: [c, b, a], one: a });
    expect(second.list[1]).toBe(first.list[1]);
    expect(second.list[2]).toBe(first.list[0]);
    expect(second.one).toBe(first.one);
  });

  it("a list without a change is the list of before; one that only lost its end is not", () => {
    const way = newWay<Small>();
    const first = way.send({ list: [a, b], one: a });
    const second = way.send({ list: [a, b], one: b });
    expect(second.list).toBe(first.list);
    const third = way.send({ list: [a], one: b });
    expect(third.list).toEqual([a]);
    expect(way.send({ list: [], one: b }).list).toEqual([]);
  });

  it("an equal object that was made anew is sent anew; a field can come and go", () => {
    const way = newWay<Small>();
    const first = way.send({ list: [a], one: a });
    const second = way.send({ list: [{ id: "a" }], one: a, perhaps: "here" });
    expect(second.list[0]).not.toBe(first.list[0]);
    expect(second.perhaps).toBe("here");
    expect(way.send({ list: [a], one: a })).toEqual({ list: [a], one: a });
  });

  it("a design that goes over piece by piece is the whole design, and what did not change costs nothing", () => {
    const piece = readExample("practice-piece");
    const memory = newMemory();
    const shapes = newWay<Shapes>();
    const work = newWay<Work>();
    const titled = (title: string): Project => ({ ...piece, title });
    const shorter: Project = { ...piece, items: piece.items.slice(0, 1) };
    const bytes = [piece, titled("another"), shorter, piece].map((project) => {
      const shaped = shapeTray(project, memory);
      expect(shapes.send(shaped)).toEqual(shaped);
      const planned = planWork(shaped, memory);
      expect(work.send(planned)).toEqual(planned);
      return shapes.bytes() + work.bytes();
    });
    expect(bytes[1]).toBeLessThan((bytes[0] ?? 0) / 5);
  });
});
